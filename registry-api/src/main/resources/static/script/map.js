// The county's map, to move about in: fetched only when it is asked for. It shows what the drawing shows.
(() => {
  const figure = document.querySelector('[data-map]');
  if (!figure) {
    return;
  }
  const drawing = figure.querySelector('svg');
  const open = figure.querySelector('[data-map-open]');
  const close = figure.querySelector('[data-map-close]');
  const failed = figure.querySelector('[data-map-failed]');
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  let box = null;

  const asset = (element, at, property) => new Promise((resolve, reject) => {
    element[property] = at;
    element.onload = resolve;
    element.onerror = reject;
    document.head.prepend(element);
  });

  const library = async () => {
    if (!window.L) {
      const style = document.createElement('link');
      style.rel = 'stylesheet';
      await Promise.all([asset(style, figure.dataset.style, 'href'),
        asset(document.createElement('script'), figure.dataset.script, 'src')]);
    }
    return window.L;
  };

  const boundary = async () => {
    const answer = await fetch(figure.dataset.boundary, { headers: { Accept: 'application/json' } });
    return answer.ok ? (await answer.json()).boundary : null;
  };

  const names = (mark) => mark.querySelector('title').textContent.trim().split('\n').map((name) => name.trim());

  const popup = (mark) => {
    const list = document.createElement('ul');
    for (const name of names(mark)) {
      const item = document.createElement('li');
      const link = document.createElement('a');
      const tag = name.slice(name.lastIndexOf(', ') + 2);
      link.href = '/trees/' + encodeURIComponent(tag);
      link.textContent = name;
      item.append(link);
      list.append(item);
    }
    return list;
  };

  const addMark = (L, map, mark) => {
    const at = mark.dataset.at.split(',').map(Number);
    const within = Number(mark.dataset.within);
    if (within > 0) {
      L.circle(at, { radius: within, className: 'area', interactive: false }).addTo(map);
    }
    const all = names(mark);
    const label = document.createElement('span');
    label.textContent = all.length > 1 ? String(all.length) : '';
    const kind = all.length > 1 ? 'leader several' : within > 0 ? 'leader open' : 'leader';
    const icon = L.divIcon({ className: kind, html: label, iconSize: [24, 24] });
    const marker = L.marker(at, { icon, title: all.join('; '), riseOnHover: true }).addTo(map).bindPopup(popup(mark));
    marker.getElement().setAttribute('aria-label', all.join('; '));
    return at;
  };

  const show = async () => {
    const [L, outline] = await Promise.all([library(), boundary()]);
    box = document.createElement('div');
    box.className = 'map';
    drawing.before(box);
    drawing.setAttribute('hidden', '');
    const map = L.map(box, { zoomControl: false, zoomAnimation: !still, fadeAnimation: !still, inertia: !still, maxZoom: 18,
      zoomSnap: figure.dataset.tiles ? 1 : .25 });
    map.attributionControl.setPrefix(false);
    box.setAttribute('role', 'group');
    box.setAttribute('aria-label', figure.dataset.label);
    L.control.zoom({ zoomInTitle: figure.dataset.in, zoomOutTitle: figure.dataset.out }).addTo(map);
    L.control.scale().addTo(map);
    if (figure.dataset.tiles) {
      const credit = document.createElement('span');
      credit.textContent = figure.dataset.attribution;
      L.tileLayer(figure.dataset.tiles, { attribution: credit.innerHTML, maxZoom: 18 }).addTo(map);
    }
    const bounds = L.latLngBounds([]);
    if (outline) {
      bounds.extend(L.geoJSON(outline, { className: 'ground', interactive: false }).addTo(map).getBounds());
    }
    drawing.querySelectorAll('[data-at]').forEach((mark) => bounds.extend(mark.dataset.at.split(',').map(Number)));
    map.fitBounds(bounds.isValid() ? bounds : [[0, 0], [0, 0]], { animate: false, padding: [8, 8] });
    drawing.querySelectorAll('[data-at]').forEach((mark) => addMark(L, map, mark));
    box.focus();
  };

  open.hidden = false;
  open.addEventListener('click', async () => {
    open.disabled = true;
    try {
      await show();
      open.hidden = true;
      close.hidden = false;
      failed.hidden = true;
    }
    catch {
      failed.hidden = false;
      drawing.removeAttribute('hidden');
      if (box) {
        box.remove();
      }
    }
    open.disabled = false;
  });
  close.addEventListener('click', () => {
    box.remove();
    drawing.removeAttribute('hidden');
    close.hidden = true;
    open.hidden = false;
    open.focus();
  });
})();
