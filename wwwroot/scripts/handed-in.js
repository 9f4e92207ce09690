// What was handed in is not kept on this device any more.
(() => {
  "use strict";

  try {
    for (const told of document.querySelectorAll("[data-handed-in]")) localStorage.removeItem(told.dataset.handedIn);
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
})();
