// Copies a link where the browser can; without this script the link stands in a field to be copied by hand.
(() => {
  "use strict";

  for (const button of document.querySelectorAll("button[data-copy]")) {
    const field = document.getElementById(button.dataset.copy);
    if (!field || !navigator.clipboard) continue;
    button.hidden = false;
    button.addEventListener("click", async () => {
      try {
        await navigator.clipboard.writeText(field.value);
        document.querySelector("[data-copied]").textContent = button.dataset.wordCopied;
      } catch {
        field.focus();
        field.select();
      }
    });
  }
})();
