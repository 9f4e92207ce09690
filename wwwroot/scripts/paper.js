// Counts a paper's time down, and sends what this device kept while it had no connection.
(() => {
  "use strict";

  for (const clock of document.querySelectorAll("[data-paper-clock]")) count(clock);
  for (const form of document.querySelectorAll("form[data-unsent]")) sendKept(form);
  // A page that the browser kept and shows again may be older than what the server holds.
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });

  // Counts from what was left by the server's clock when the page was made; this device's own clock may be wrong.
  function count(clock) {
    const ends = performance.now() + Number(clock.dataset.left) * 1000;
    const status = document.querySelector("[data-paper-clock-word]");
    const soon = document.querySelector("[data-paper-clock-soon]");
    const spoken = new Set();
    document.querySelector("[data-paper-clock-end]").hidden = false;
    let over = false;
    tick();
    setInterval(tick, 500);

    function tick() {
      const left = Math.max(0, Math.ceil((ends - performance.now()) / 1000));
      const text = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}`;
      clock.textContent = clock.dataset.wordLeft.replace("{0}", text);
      clock.classList.toggle("clock-low", left <= 300);
      if (left <= 300) warn(Math.max(1, Math.ceil(left / 60)));
      for (const minutes of [5, 1]) {
        if (left > minutes * 60 || left <= minutes * 60 - 10 || spoken.has(minutes)) continue;
        spoken.add(minutes);
        status.textContent = soon.textContent;
      }
      if (left > 0 || over) return;
      over = true;
      // The server closes the paper; a moment later it has done so by its own clock, too.
      setTimeout(() => location.assign(clock.dataset.over), 1500);
    }

    // The line stands there for the eye all the time; it is read out twice.
    function warn(minutes) {
      const text = minutes === 1 ? soon.dataset.wordOne : soon.dataset.wordMany.replace("{0}", minutes);
      if (soon.textContent !== text) soon.textContent = text;
    }
  }

  // Each question keeps its answer under its own address until the server has it. What the server does not take is not sent
  // again: it waits on the question's page.
  async function sendKept(form) {
    const prefix = form.dataset.unsent;
    const word = form.querySelector("p");
    const stuck = form.querySelector("ul");
    const waiting = () => keptAnswers.mine(prefix).filter(address => !keptAnswers.read(address).stuck);
    if (keptAnswers.mine(prefix).length === 0) return;
    form.hidden = false;
    word.textContent = form.dataset.word;
    for (const address of waiting()) await send(address);
    if (keptAnswers.mine(prefix).length === 0) {
      location.reload();
      return;
    }
    word.textContent = form.dataset.wordWaiting;
    stuck.replaceChildren(...keptAnswers.mine(prefix).filter(address => keptAnswers.read(address).stuck).map(line));
    if (waiting().length > 0) setTimeout(() => sendKept(form), 3000);

    async function send(address) {
      try {
        const answer = await keptAnswers.send(address, form);
        if (answer.ok || answer.status === 410) keptAnswers.remove(address);
        else if (answer.status === 409 || answer.status === 422)
          keptAnswers.write(address, { ...keptAnswers.read(address), stuck: (await answer.json().catch(() => null))?.detail ?? " " });
      } catch {
        // Still no connection: it is tried again.
      }
    }

    function line(address) {
      const number = address.slice(prefix.length);
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.className = "button";
      link.href = address.replace("/answers/", "/questions/");
      link.textContent = form.dataset.wordOpen.replace("{0}", number);
      item.append(form.dataset.wordStuck.replace("{0}", number).replace("{1}", keptAnswers.read(address).stuck), " ", link);
      return item;
    }
  }
})();
