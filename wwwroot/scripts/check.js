// Shows the reply to a check question in its place. Without this script the page comes back with the reply on it.
(() => {
  "use strict";

  for (const form of document.querySelectorAll("form[data-check]")) begin(form);

  function begin(form) {
    const reply = form.querySelector(".check-reply");
    let byHand = false;

    form.addEventListener("submit", async event => {
      const button = event.submitter;
      if (byHand || !button) return;
      event.preventDefault();
      const data = new FormData(form);
      data.set(button.name, button.value);
      try {
        const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(data), headers: { Accept: "application/json" } });
        show(button, await answer.json());
      } catch {
        // Signed out, or no connection: the browser goes the long way and says which.
        byHand = true;
        form.requestSubmit(button);
      }
    });

    function show(button, said) {
      if (typeof said.html !== "string") throw new Error("No reply came.");
      for (const other of form.querySelectorAll("button[name=answer]")) {
        other.setAttribute("aria-pressed", String(other === button));
        other.className = other !== button ? "" : said.isRight ? "is-right" : "is-wrong";
      }
      const heading = document.createElement("p");
      heading.className = said.isRight ? "right" : "wrong";
      heading.textContent = said.heading;
      reply.innerHTML = said.html;
      reply.prepend(heading);
    }
  }
})();
