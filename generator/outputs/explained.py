"""Words of the lab explained in place, each where a page uses it first."""

import re
from functools import lru_cache

from markupsafe import Markup, escape


class Explained:
    """The words of one page; `met` fills, in the order of the page, with (id, word, meaning) of those used.

    A word becomes a button that opens its meaning in a popover of the browser's own: no script, no style.
    """

    def __init__(self, glossary: tuple[tuple[str, str], ...], verbs: frozenset[str] = frozenset()) -> None:
        """`verbs` are words that mean what the lab says only at a step that does just that.

        "Hold the board" is no hold.
        """
        self._verbs = verbs
        self._left = {term.lower(): (term, means) for term, means in glossary if term}
        self.met: list[tuple[str, str, str]] = []

    def explain(self, text: str, verb: str = "") -> Markup:
        """Return the text escaped, each word not met before as a button; `verb` is the step's own."""
        if not self._left:
            return escape(text)
        shown, end = Markup(""), 0
        for found in _pattern(tuple(self._left)).finditer(text):
            word = found[1].lower()
            is_other = word in self._verbs and word != verb.lower()
            entry = None if is_other else self._left.pop(word, None)
            if entry is None:
                continue
            id = f"word_{len(self.met) + 1}"
            self.met.append((id, *entry))
            button = Markup('<button type="button" class="nw-term" popovertarget="{}">{}</button>')
            shown += escape(text[end : found.start()]) + button.format(id, found[0])
            end = found.end()
        return shown + escape(text[end:])


@lru_cache(maxsize=256)
def _pattern(left: tuple[str, ...]) -> re.Pattern[str]:
    words = sorted(left, key=len, reverse=True)
    return re.compile(rf"\b({'|'.join(map(re.escape, words))})s?\b", re.IGNORECASE)
