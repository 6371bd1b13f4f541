// Photos made as large as the register keeps them, before they are kept or sent.

const MOST_PIXELS = 2048;
const QUALITY = 0.85;

/** As it came where this browser can't read it. */
export async function shrink(file) {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, MOST_PIXELS / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(picture.width * scale);
    canvas.height = Math.round(picture.height * scale);
    canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const small = await new Promise((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
    return small ?? file;
  } catch {
    return file;
  }
}

/** The content security policy takes pictures from here and as data only. */
export function toDataUrl(blob) {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result);
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
}
