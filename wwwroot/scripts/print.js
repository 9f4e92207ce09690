// Offers to print where the browser can; without this script the browser's own menu does.
(() => {
  "use strict";

  for (const button of document.querySelectorAll("button[data-print]")) {
    button.hidden = false;
    button.addEventListener("click", () => print());
  }
})();
