// In the preview only: show what was saved, at the place where the reader is. A page with scripts of its own is
// loaded again, since they have to begin anew; any other only gets its new content, which is much quicker.
"use strict";
(() => {
  let shown = document.currentScript.dataset.version;
  const changes = new EventSource("/.preview/changes");
  const again = () => {
    changes.close();
    location.reload();
  };
  const show = async (version) => {
    const answer = await fetch(location.href);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (version !== shown) return; // a newer one is on its way
    if (!answer.ok || page.querySelector("head script[src]") || document.querySelector("head script[src]")) {
      again();
      return;
    }
    document.title = page.title;
    document.body.replaceWith(document.adoptNode(page.body));
  };
  changes.addEventListener("message", (event) => {
    if (event.data === shown) return;
    shown = event.data;
    show(shown).catch(again);
  });
  addEventListener("pagehide", () => changes.close());
})();
