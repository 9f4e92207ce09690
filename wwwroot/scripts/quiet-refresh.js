// Keeps a part of a page fresh: asks for the page again now and then and puts that part in place of the old one.
// It rests while the page is not looked at, while somebody has the keyboard in that part, and for good once it is signed out.
(() => {
  "use strict";

  for (const part of document.querySelectorAll("[data-refresh]")) keep(part);

  function keep(part) {
    const pause = Number(part.dataset.refresh) * 1000;
    if (!pause) return;
    const timer = setInterval(look, pause);
    document.addEventListener("visibilitychange", look);

    async function look() {
      if (document.hidden || part.contains(document.activeElement)) return;
      try {
        const answer = await fetch(location.href, { headers: { Accept: "text/html" } });
        if (answer.redirected) { clearInterval(timer); return; }
        if (!answer.ok) return;
        const page = new DOMParser().parseFromString(await answer.text(), "text/html");
        const fresh = page.getElementById(part.id);
        if (!fresh || part.contains(document.activeElement)) return;
        if (fresh.innerHTML !== part.innerHTML) part.innerHTML = fresh.innerHTML;
        if (!fresh.dataset.refresh) clearInterval(timer);
      } catch {
        // No connection: the next look tries again.
      }
    }
  }
})();
