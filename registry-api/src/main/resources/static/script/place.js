// The position of the phone, where it is asked for.

export function locate(form) {
  const button = document.getElementById('locate');
  const told = document.getElementById('located');
  if (!button) {
    return;
  }
  button.hidden = false;
  button.addEventListener('click', () => {
    if (!window.isSecureContext || !navigator.geolocation) {
      told.textContent = told.dataset.insecure;
      return;
    }
    told.textContent = told.dataset.waits;
    navigator.geolocation.getCurrentPosition(({ coords }) => {
      const metres = Math.max(1, Math.round(coords.accuracy));
      put('location.latitude', coords.latitude.toFixed(5));
      put('location.longitude', coords.longitude.toFixed(5));
      put('location.accuracyMetres', metres);
      told.textContent = told.dataset.done.replace('#', metres);
    }, (failure) => {
      told.textContent = failure.code === failure.PERMISSION_DENIED ? told.dataset.refused : told.dataset.failed;
    }, { enableHighAccuracy: true, timeout: 20000, maximumAge: 10000 });
  });

  function put(name, value) {
    const field = form.elements[name];
    field.value = value;
    field.dispatchEvent(new Event('input', { bubbles: true }));
  }
}
