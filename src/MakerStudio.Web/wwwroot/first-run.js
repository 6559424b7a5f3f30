// Proposes the browser's own time zone and language on an untouched form; a posted one keeps what was chosen.
const guesses = {
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  culture: navigator.language,
};
const untouched = !document.querySelector(".note");
for (const list of untouched ? document.querySelectorAll("select[data-guess]") : []) {
  const guess = guesses[list.dataset.guess];
  if ([...list.options].some(option => option.value === guess)) list.value = guess;
}
