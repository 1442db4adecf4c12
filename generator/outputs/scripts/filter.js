/** Find a symptom by the words that one would type. */
import { all, make } from "./dom.js";

/** Boxes over lists of rows; every word typed must stand in a row. */
export function startFilters() {
  for (const place of all("[data-nw-filter]")) {
    const rows = [...document.getElementById(place.dataset.nwFilter).children];
    const said = make("p", { class: "nw-small", role: "status" });
    const box = make("input", { type: "search", class: "nw-box", oninput: () => sift(box.value) });
    const sift = (text) => {
      const words = text.toLowerCase().split(/\s+/).filter(Boolean);
      let left = 0;
      for (const row of rows) {
        const has = row.textContent.toLowerCase();
        row.hidden = !words.every((word) => has.includes(word));
        if (!row.hidden) left += 1;
      }
      said.textContent = words.length ? left + " of " + rows.length : "";
    };
    place.append(make("label", { class: "nw-field" }, [make("span", { text: "What do you see?" }), box]), said);
  }
}
