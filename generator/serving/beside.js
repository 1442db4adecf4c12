/** In the preview only: a wall card beside the page that it belongs to, drawn anew after each build. */
(function () {
  "use strict";
  var KEPT = "newel-beside";
  var aside = document.createElement("aside");
  var which = document.createElement("select");
  var drawing = document.createElement("img");
  var toggle = document.createElement("button");
  aside.className = "nw-beside";
  aside.setAttribute("aria-label", "Card beside the page");
  which.className = "nw-box";
  which.setAttribute("aria-label", "Which card");
  toggle.type = "button";
  toggle.className = "nw-button nw-beside-button";
  aside.append(which, drawing);
  document.body.append(aside, toggle);

  function cards() {
    return Array.from(document.querySelectorAll(".nw-card-list a")).filter(function (card) { return card.querySelector("img"); });
  }

  /** @param {string} [wish] the card to show, "" for none; as before if not given */
  function show(wish) {
    var found = cards();
    if (wish !== undefined) sessionStorage.setItem(KEPT, wish);
    var kept = sessionStorage.getItem(KEPT) || "";
    var card = found.find(function (one) { return one.querySelector("b").textContent === kept; }) || (kept && found[0]);
    toggle.hidden = !found.length;
    aside.hidden = !card;
    document.body.classList.toggle("nw-has-beside", Boolean(card));
    toggle.textContent = card ? "Page alone" : "Card beside the page";
    if (!card) return;
    which.replaceChildren.apply(which, found.map(function (one) {
      var title = one.querySelector("b").textContent;
      return new Option(title, title, false, one === card);
    }));
    drawing.alt = card.querySelector("b").textContent;
    drawing.src = card.querySelector("img").src + "?" + Date.now();
  }

  which.addEventListener("change", function () { show(which.value); });
  toggle.addEventListener("click", function () {
    var first = cards()[0];
    show(aside.hidden && first ? first.querySelector("b").textContent : "");
  });
  window.newelBeside = show;
  show();
})();
