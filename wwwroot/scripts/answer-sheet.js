// Makes the taps of an answer sheet without a journey to the server, and saves them quietly where the sheet says so.
// Every tap does the same as the form's own buttons do without this script.
(() => {
  "use strict";

  for (const form of document.querySelectorAll("form[data-answer-sheet]")) begin(form);

  function begin(form) {
    const placed = form.querySelector(".placed");
    const template = form.querySelector("template");
    const none = form.querySelector(".placed-none");
    const before = Number(form.dataset.before || 0);
    const saver = form.dataset.saveAddress ? saving(form) : null;

    form.addEventListener("click", event => {
      const button = event.target.closest("button[name=change]");
      if (!button) return;
      event.preventDefault();
      if (button.dataset.step) toggle(button);
      else move(button.closest("li"), button.dataset.move || button.value.split(":")[0]);
      draw();
      saver?.changed();
    });
    form.addEventListener("input", event => { if (event.target.name === "seconds") saver?.changed(); });
    form.addEventListener("keydown", event => {
      if (event.key === "Enter" && event.target.name === "seconds") event.preventDefault();
    });
    saver?.restore(steps => {
      for (const row of rows()) row.remove();
      for (const [id, seconds] of steps) {
        const button = form.querySelector(`.offered button[data-step="${CSS.escape(id)}"]`);
        if (button) add(button, seconds);
      }
      draw();
    });

    function rows() { return [...placed.querySelectorAll("li[data-placed]")]; }

    function toggle(button) {
      const row = rows().find(item => item.dataset.placed === button.dataset.step);
      if (row) row.remove();
      else add(button, "");
    }

    function add(button, seconds) {
      const row = template.content.firstElementChild.cloneNode(true);
      const text = button.querySelector(".text").textContent;
      row.dataset.placed = button.dataset.step;
      row.querySelector(".text").textContent = text;
      row.querySelector("input[name=step]").value = button.dataset.step;
      for (const mover of row.querySelectorAll("[data-move]"))
        mover.setAttribute("aria-label", mover.dataset.label.replace("{0}", text));
      const wait = row.querySelector(".how-long");
      if (button.dataset.wait) {
        const input = wait.querySelector("input");
        input.id = `how-long-${button.dataset.step}`;
        input.value = seconds;
        wait.querySelector("label").htmlFor = input.id;
      } else {
        const empty = document.createElement("input");
        empty.type = "hidden";
        empty.name = "seconds";
        wait.replaceWith(empty);
      }
      placed.append(row);
    }

    function move(row, way) {
      const other = way === "up" ? row.previousElementSibling : row.nextElementSibling;
      if (!other || !other.dataset.placed) return;
      if (way === "up") other.before(row); else other.after(row);
      const button = row.querySelectorAll(".moves button")[way === "up" ? 0 : 1];
      requestAnimationFrame(() => (button.disabled ? row.querySelector(".moves button:not(:disabled)") : button)?.focus());
    }

    function draw() {
      const places = new Map();
      rows().forEach((row, index, all) => {
        places.set(row.dataset.placed, index + 1);
        row.querySelector(".place").textContent = index + 1 + before;
        const [up, down] = row.querySelectorAll(".moves button");
        up.value = `up:${index + 1}`;
        down.value = `down:${index + 1}`;
        up.disabled = index === 0;
        down.disabled = index === all.length - 1;
      });
      none.hidden = places.size > 0;
      for (const button of form.querySelectorAll(".offered button")) {
        const place = places.get(button.dataset.step);
        button.parentElement.classList.toggle("is-placed", Boolean(place));
        button.setAttribute("aria-pressed", place ? "true" : "false");
        button.value = `${place ? "back" : "place"}:${button.dataset.step}`;
        button.querySelector(".place").textContent = place ? place + before : "";
      }
    }
  }

  // Keeps the newest order on this device until the server has it; a later number always wins over an earlier one.
  function saving(form) {
    const word = form.querySelector("[data-save-word]");
    const number = form.querySelector("input[name=saveNumber]");
    const key = `answer:${form.dataset.saveAddress}`;
    let timer = 0;
    let busy = false;
    let handedIn = false;

    form.addEventListener("submit", () => { handedIn = true; });
    addEventListener("online", send);
    setInterval(() => { if (pending()) send(); }, 5000);

    function pending() { return localStorage.getItem(key) !== null; }

    function changed() {
      number.value = String(Math.max(Number(number.value) + 1, Date.now()));
      const steps = [...form.querySelectorAll("li[data-placed]")].map(row =>
        [row.dataset.placed, row.querySelector("input[name=seconds]").value]);
      localStorage.setItem(key, JSON.stringify({ number: number.value, steps }));
      clearTimeout(timer);
      timer = setTimeout(send, 300);
    }

    async function send() {
      if (busy || handedIn || !pending()) return;
      busy = true;
      const sent = number.value;
      try {
        const answer = await fetch(form.dataset.saveAddress, {
          method: "POST", body: new URLSearchParams(new FormData(form)), headers: { Accept: "application/json" }, redirect: "manual",
        });
        if (answer.ok) {
          if (number.value === sent) localStorage.removeItem(key);
          word.textContent = form.dataset.wordSaved;
        } else if (answer.type === "opaqueredirect" || answer.status === 409 || answer.status === 410) {
          localStorage.removeItem(key);
          location.reload();
        } else {
          word.textContent = (await answer.json().catch(() => null))?.detail ?? form.dataset.wordWaiting;
        }
      } catch {
        word.textContent = form.dataset.wordWaiting;
      } finally {
        busy = false;
      }
    }

    function restore(put) {
      const kept = JSON.parse(localStorage.getItem(key) ?? "null");
      if (!kept) return;
      if (Number(kept.number) > Number(form.dataset.saveNumber)) {
        put(kept.steps);
        number.value = kept.number;
        send();
      } else {
        localStorage.removeItem(key);
      }
    }

    return { changed, restore };
  }
})();
