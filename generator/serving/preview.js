/** In the preview only: follow the builds, swap the article in place, show what is wrong over the last good page. */
(function () {
  "use strict";
  var base = new URL("..", document.currentScript.src);
  var panel = document.createElement("aside");
  var seen = null;
  panel.className = "nw-preview";
  panel.setAttribute("role", "alert");
  panel.hidden = true;
  document.body.appendChild(panel);

  /** @param {string} tag @param {string} text @param {string} [kind] */
  function line(tag, text, kind) {
    var made = document.createElement(tag);
    made.textContent = text;
    if (kind) made.className = kind;
    return made;
  }

  /** @param {{rule: string, where: string, message: string, fix: string}[]} problems */
  function tell(problems) {
    panel.hidden = problems.length === 0;
    panel.replaceChildren(line("b", problems.length === 1 ? "1 error keeps this page from following" : problems.length + " errors keep this page from following"));
    problems.forEach(function (problem) {
      var item = document.createElement("div");
      item.append(line("p", problem.message + " [" + problem.rule + "]"), line("code", problem.where), line("p", "Fix: " + problem.fix));
      panel.append(item);
    });
  }

  /** A script that this page has not loaded runs only where a page is opened. @param {ParentNode} next */
  function asksForMore(next) {
    return [].some.call(next.querySelectorAll("script[src]"), function (script) {
      return !document.querySelector('script[src="' + script.getAttribute("src") + '"]');
    });
  }

  /** Pictures that are the same stay the same elements, so that none is loaded again. @param {Element} now @param {Element} next */
  function keepPictures(now, next) {
    var old = Array.from(now.querySelectorAll("img"));
    next.querySelectorAll("img").forEach(function (fresh) {
      var at = old.findIndex(function (one) { return one.isEqualNode(fresh); });
      if (at >= 0) fresh.replaceWith(old.splice(at, 1)[0]);
    });
  }

  /** @param {string} html of the article */
  function swap(html) {
    var now = document.querySelector("article");
    var made = document.createElement("template");
    made.innerHTML = html;
    if (!now || asksForMore(made.content)) return location.reload();
    var next = /** @type {Element} */ (now.cloneNode(false)); // what listens to the old one goes with it
    next.append(made.content);
    keepPictures(now, next);
    now.replaceWith(next);
    document.querySelectorAll(".nw-bench-bar").forEach(function (bar) { bar.remove(); });
    if (window.newelWake) window.newelWake();
  }

  var page = decodeURIComponent(location.pathname.slice(base.pathname.length)).replace(/(^|\/)$/, "$1index.html");
  var here = new URLSearchParams({ page: page, version: document.currentScript.dataset.version || "" });
  var news = new EventSource(new URL("_newel/news?" + here, base));
  news.onmessage = function (event) {
    var told = JSON.parse(event.data);
    tell(told.problems);
    if (told.reload) return location.reload();
    if (told.article !== undefined) swap(told.article);
    if (seen !== null && window.newelBeside) window.newelBeside();
    seen = told.version;
  };
})();
