// Puts the code of a one-time link into its field, and takes it out of the address bar and of what the browser remembers.
(() => {
  const field = document.getElementById("token");
  const code = decodeURIComponent(location.hash.slice(1));
  if (field && /^[A-Za-z0-9_-]{20,}$/.test(code)) {
    field.value = code;
    history.replaceState(null, "", location.pathname);
    document.getElementById(field.dataset.next)?.focus();
  }
})();
