// Shows whom the typed words fit as they are typed; without this script a button does it. What is ticked stays in sight.
(() => {
  "use strict";

  const form = document.querySelector("form[data-proof-choice]");
  const field = form?.querySelector("[data-find]");
  if (!field) return;
  const plain = text => text.normalize("NFD").replace(/\p{Mn}/gu, "").toLowerCase();
  const choices = [...form.querySelectorAll("[data-found]")];
  // What the page was opened with may leave people out that the server knows: then the server is asked.
  if (field.value.trim() !== "") return;

  const show = () => {
    const words = field.value.split(",").map(word => plain(word.trim())).filter(word => word !== "");
    for (const choice of choices) {
      const text = plain(choice.dataset.found);
      choice.hidden = !(words.length === 0 || choice.querySelector("input").checked || words.some(word => text.includes(word)));
    }
    for (const person of form.querySelectorAll(".choice-person"))
      person.hidden = [...person.querySelectorAll("[data-found]")].every(choice => choice.hidden);
  };
  field.addEventListener("input", show);
})();
