// In the preview only: reload when the journal was saved. The browser keeps the reader's place.
"use strict";
(() => {
  const mine = document.currentScript.dataset.version;
  const changes = new EventSource("/.preview/changes");
  changes.addEventListener("message", (event) => {
    if (event.data !== mine) {
      changes.close();
      location.reload();
    }
  });
  addEventListener("pagehide", () => changes.close());
})();
