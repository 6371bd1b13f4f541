// Tells how far an import has come without loading the page anew, and loads it once when the import is done.
(() => {
  const box = document.querySelector("[data-import]");
  if (!box) return;
  const bar = box.querySelector("progress");
  const words = box.querySelector("[data-words]");
  const ask = async () => {
    try {
      const answer = await fetch("/api/v1/imports/" + box.dataset.import, { headers: { Accept: "application/json" } });
      if (!answer.ok) return;
      const job = await answer.json();
      bar.value = job.progress;
      words.textContent = Math.floor(100 * job.progress) + " %";
      if (job.finishedAt && job.status !== "withdrawing") { location.reload(); return; }
    } catch { /* The network comes and goes: ask again. */ }
    setTimeout(ask, 2000);
  };
  setTimeout(ask, 1000);
})();
