/**
 * Search in an index that was cut into parts, with the answers that the theme's worker would give. Loaded by
 * parts-worker where a site has such an index, and nowhere else.
 */
(function () {
  "use strict";
  const assets = document.currentScript.src;
  const FIRST = 10; // results that the theme draws at once
  const LATER = 200; // milliseconds, so that the first are drawn before
  const MOST = 100; // results that get their sentences; behind them a title must do
  /** @type {Record<string, Promise<any>>} */
  const asked = {};
  /** @type {Record<string, (content: any) => void>} */
  const waiting = {};

  /** Called by each part. @param {string} name @param {any} content */
  window.newelSearchPart = function (name, content) { waiting[name](content); };

  /** @param {string} folder @param {string} name @returns {Promise<any>} a part; one that failed is asked for again */
  function load(folder, name) {
    asked[name] ||= new Promise((done, failed) => {
      waiting[name] = done;
      const script = document.createElement("script");
      script.src = new URL("../search/" + folder + "/" + name + ".js", assets).href;
      script.onerror = () => {
        delete asked[name];
        failed(new Error("The search could not read " + script.src));
      };
      document.head.appendChild(script);
    });
    return asked[name];
  }

  /** @param {string} text @param {RegExp} separator @returns {[number, number][]} where each word begins and ends */
  function words(text, separator) {
    let at = 0;
    const found = [];
    for (const match of [...text.matchAll(separator), { index: text.length, 0: "" }]) {
      if (match.index > at) found.push([at, match.index]);
      at = match.index + match[0].length;
    }
    return found;
  }

  /**
   * The words sought. One stands for all that begin with it, but for those in quotes, with a sign before them or
   * before a hyphen; + is a word that must be there, - one that must not. Words joined by hyphens count as often
   * as there are of them, which is the theme's way.
   * @param {string} query @param {RegExp} separator @returns {{term: string, sign: string, whole: boolean, times: number}[]}
   */
  function clauses(query, separator) {
    const signed = query.split('"').map((part, turn) => (turn % 2 ? part.trim().replace(/^|\s+/g, " +") : part)).join(" ");
    return signed.split(/\s+/).flatMap((word) => {
      const sign = /^[+-]/.test(word) ? word[0] : "";
      const pieces = word.slice(sign.length).replace(/[*~^]\d*$/, "").toLowerCase().split(/-+/).filter(Boolean);
      return pieces.flatMap((piece, turn) =>
        words(piece, separator).map(([from, to]) => ({ term: piece.slice(from, to), sign, whole: Boolean(sign) || turn < pieces.length - 1, times: pieces.length })),
      );
    });
  }

  /** @param {any} parts @param {{term: string, whole: boolean}} clause @returns {Promise<[string, number[]][]>} */
  async function meant(parts, { term, whole }) {
    const files = parts.words.flatMap((first, number) => {
      const next = parts.words[number + 1];
      return (next === undefined || next > term) && (first <= term || first.startsWith(term)) ? [load(parts.folder, "words-" + number)] : [];
    });
    const rows = (await Promise.all(files)).flatMap(Object.entries);
    return rows.filter(([word]) => (whole ? word === term : word.startsWith(term)));
  }

  /** What each entry scores and by which words. @param {any[]} sought clauses with their rows */
  function scores(sought) {
    const often = new Map();
    for (const { rows, sign, times } of sought) {
      if (sign !== "-") for (const [word, places] of rows) often.set(word, { places, times: (often.get(word)?.times || 0) + times });
    }
    const length = Math.sqrt([...often.values()].reduce((sum, one) => sum + one.times ** 2, 0));
    const found = new Map();
    for (const [word, { places, times }] of often) {
      for (let at = 0; at < places.length; at += 2) {
        const one = found.get(places[at]) || { score: 0, words: new Set() };
        one.score += (times * places[at + 1]) / length;
        found.set(places[at], { score: one.score, words: one.words.add(word) });
      }
    }
    for (const { rows, sign } of sought.filter((one) => one.sign)) {
      const there = new Set(rows.flatMap(([, places]) => places.filter((_, at) => at % 2 === 0)));
      for (const number of found.keys()) if (there.has(number) === (sign === "-")) found.delete(number);
    }
    return found;
  }

  /** Which terms an entry has; one left out of the index is not missed. @param {any[]} sought @param {Set<string>} has @param {string[]} stop */
  function termsOf(sought, has, stop) {
    const terms = {};
    for (const { term, sign } of sought) {
      if (sign === "-") continue;
      const there = [...has].some((word) => word.startsWith(term));
      if (there || !stop.includes(term)) terms[term] = there;
    }
    return terms;
  }

  /** @param {string} html escaped when it was built @param {Set<string>} has @param {RegExp} separator */
  function marked(html, has, separator) {
    return html.replace(/<[^>]*>|[^<]+/g, (piece) => {
      if (piece[0] === "<") return piece;
      let shown = "", at = 0;
      for (const [from, to] of words(piece, separator)) {
        if (!has.has(piece.slice(from, to).toLowerCase())) continue;
        shown += piece.slice(at, from) + "<mark>" + piece.slice(from, to) + "</mark>";
        at = to;
      }
      return shown + piece.slice(at);
    });
  }

  /** The first two sentences or lists that hold a word sought, else all. @param {string} html @param {Set<string>} has @param {RegExp} separator */
  function teaser(html, has, separator) {
    const blocks = [];
    let depth = 0, start = 0;
    for (const tag of html.matchAll(/<(\/?)[^>]*>/g)) {
      depth += tag[1] ? -1 : 1;
      if (!tag[1] || depth) continue;
      blocks.push(html.slice(start, tag.index + tag[0].length));
      start = tag.index + tag[0].length;
    }
    const shown = [...blocks, html.slice(start)].map((block) => [block, marked(block, has, separator)]);
    return shown.filter(([plain, mark]) => plain !== mark).slice(0, 2).map(([, mark]) => mark).join("") || html;
  }

  /** An index in parts. @param {any} config of the index @returns {(query: string, wanted: () => boolean) => Promise<any[][]>} results by page, best first; nothing in particular once they are not wanted */
  function openParts({ parts, separator: pattern }) {
    const separator = new RegExp(pattern, "g");
    const pages = new Map();
    const titles = load(parts.folder, "titles").then((rows) => {
      rows.forEach(([location], number) => pages.has(location.split("#")[0]) || pages.set(location.split("#")[0], number));
      return rows;
    });

    /** Gives results their sentences. @param {any[][]} groups */
    async function fill(groups) {
      await Promise.all(groups.flat().map(async (item) => {
        const file = parts.texts.findLastIndex((first) => first <= item.number);
        const texts = await load(parts.folder, "texts-" + file);
        item.text = teaser(texts[item.number - parts.texts[file]], item.has, separator);
      }));
    }

    return async function search(query, wanted) {
      const rows = await titles;
      const sought = await Promise.all(clauses(query, separator).map(async (clause) => ({ ...clause, rows: await meant(parts, clause) })));
      if (!wanted()) return [];
      const groups = new Map();
      /** @param {number} number @param {Set<string>} has @param {number} score @param {Record<string, boolean>} terms */
      const item = (number, has, score, terms) => {
        const [location, title, tags] = rows[number];
        const shown = { number, has, location, text: "", score, terms };
        Object.defineProperty(shown, "title", { get: () => marked(title, has, separator) }); // few are ever drawn
        return tags ? Object.defineProperty(shown, "tags", { get: () => tags.map((tag) => marked(tag, has, separator)) }) : shown;
      };
      const found = [...scores(sought)].map(([number, { score, words: has }]) => {
        const terms = termsOf(sought, has, parts.stop), there = Object.values(terms);
        const page = pages.get(rows[number][0].split("#")[0]);
        const share = Number(page === number) + there.filter(Boolean).length / there.length;
        return { number, page, has, terms, score: score * (1 + share ** 2) };
      });
      for (const one of found.sort((left, right) => right.score - left.score || left.number - right.number)) {
        groups.set(one.page, [...(groups.get(one.page) || []), item(one.number, one.has, one.score, one.terms)]);
      }
      for (const [page, items] of groups) if (items.every((one) => one.number !== page)) items.push(item(page, new Set(), 0, {}));
      const all = [...groups.values()];
      await fill(all.slice(0, FIRST));
      setTimeout(() => wanted() && fill(all.slice(FIRST, MOST)), LATER); // drawn when someone scrolls there
      return all;
    };
  }

  window.newelOpenParts = openParts;
})();
