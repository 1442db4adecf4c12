"""Sets a document for the hand on as many pages as it needs: the largest letters that keep it short."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from generator.outputs.press.blocks import Block, abreast, marks_of, stacked, text_block
from generator.outputs.press.codes import code_of
from generator.outputs.press.composing import across
from generator.outputs.press.door import print_book
from generator.outputs.press.drawing import Box, Mark, Run, Sheet
from generator.outputs.press.forms import blanks, form, paragraph_block, texts_of
from generator.outputs.press.letters import Letters
from generator.outputs.press.lines import lines_block
from generator.outputs.press.paper import Paper, least_letter, paper
from generator.outputs.press.texts import demand, unprintable_in
from generator.problems import NewelError
from generator.views.paper import PaperBlanks, PaperLines, PaperPart, PaperTable, PaperView

# For a reader at arm's length 2.0 mm is the least that the press sets.
_NOTCH = 0.1
_LEAST = least_letter(0.0)
_CODE = 23.0
# A table does not begin at the foot of a page with fewer rows than these.
_TOGETHER = 4
# A last page filled to less than this is worth smaller letters if they save it.
_BARE = 0.3


@lru_cache(maxsize=500)
def document_pdf(view: PaperView) -> bytes:
    """The document as a tagged PDF (PDF/UA-1 export); the same bytes every time."""
    return print_book(document_sheets(view), view.title, view.language, view.dated)


def document_sheets(view: PaperView) -> tuple[Sheet, ...]:
    """Its pages; NewelError for a character without a letter."""
    demand(view.title, unprintable_in(_printed(view)))
    letters, pages = _fullest(view)
    return tuple(_sheet(view, pages, number, letters) for number in range(len(pages)))


def _fullest(view: PaperView) -> tuple[Letters, list[list[Block]]]:
    """The largest letters that keep to the pages asked for, and leave no few lines alone on a last one.

    Where no letters save that last page, it stays. Where none keep to the pages asked for, the largest that
    need the fewest: smaller ones would save nothing.
    """
    found: tuple[Letters, list[list[Block]]] | None = None
    shortest: tuple[Letters, list[list[Block]]] | None = None
    cap = view.letters
    while True:
        letters = Letters(cap)
        pages = _pages(view, letters)
        if not shortest or len(pages) < len(shortest[1]):
            shortest = letters, pages
        if found and len(pages) < len(found[1]):
            return letters, pages
        if len(pages) <= view.most_pages and not found:
            if len(pages) == 1 or not _sparse(view, pages[-1]):
                return letters, pages
            found = letters, pages
        if cap - _NOTCH < _LEAST - 1e-9:
            return found or shortest
        cap = round(cap - _NOTCH, 3)


def _sparse(view: PaperView, page: Sequence[Block]) -> bool:
    """Whether a last page is nearly bare."""
    return sum(block.gap + block.height for block in page) < _BARE * _paper(view).inner_height


def _printed(view: PaperView) -> Iterator[str]:
    yield from (
        view.title,
        view.about,
        view.identity,
        view.caution,
        view.address_shown,
        view.words.draft_note,
    )
    for part in view.parts:
        yield from texts_of(part)


def _paper(view: PaperView) -> Paper:
    return paper(view.size, "landscape" if view.turned else "portrait")


def _pages(view: PaperView, letters: Letters) -> list[list[Block]]:
    """The blocks of each page, in order; tables are cut between rows and repeat their heads."""
    sheet = _paper(view)
    room = sheet.inner_height - _foot(view, 9, 9, letters).height - letters.space
    pages: list[list[Block]] = [[]]
    used = _head(view, letters).height
    for part in view.parts:
        for piece in _cut(part, sheet.inner_width, letters, room, used):
            need = piece.gap + piece.height
            if used + need > room and pages[-1]:
                pages.append([])
                used = _running(view, letters).height
            if need > room:
                raise NewelError(
                    "page-too-small",
                    f"a row of {view.title!r} is longer than a page",
                    "a row is never cut",
                    "say it in fewer words",
                )
            pages[-1].append(piece)
            used += need
    return pages


def _cut(part: PaperPart, width: float, letters: Letters, room: float, used: float) -> Iterator[Block]:
    """A part in pieces that fit the rest of the page and the pages after it."""
    if isinstance(part, PaperTable):
        yield from _cut_table(part, width, letters, room, used)
    elif isinstance(part, PaperBlanks):
        yield blanks(part, width, letters)
    elif isinstance(part, PaperLines):
        yield lines_block(part, width, letters)
    else:
        yield paragraph_block(part, width, letters)


def _cut_table(
    table: PaperTable, width: float, letters: Letters, room: float, used: float
) -> Iterator[Block]:
    set_form = form(table, width, letters)
    title = text_block((Run(table.title, bold=True),), width, letters.place, role="heading")
    lead = title.height + 0.6 * letters.gap + letters.space if table.title else letters.space
    first, total = 0, len(set_form.rows)
    while first < total:
        left = room - used - lead
        last = first
        while last < total and set_form.height(first, last + 1) <= left:
            last += 1
        if last == first and used <= letters.space * 6:
            last = first + 1
        if last == total - 1 and last > first + 1:
            last -= 1  # no row stands alone on the next page
        if not first and last < min(_TOGETHER, total) and used > letters.space * 6:
            last = first
        if last > first:
            gap = 0.6 * letters.gap if table.title else letters.space
            body = set_form.block(first, last)._replace(gap=gap)
            whole = stacked((title, body), gap=letters.space) if not first and table.title else body
            yield whole
            first, lead = last, 0.6 * letters.gap
        # What is left goes to the top of the next page.
        used = 4 * letters.space
    if table.note:
        yield text_block((Run(table.note),), width, letters.text, gap=letters.gap)


def _head(view: PaperView, letters: Letters) -> Block:
    """Title, where it belongs, which issue; the code at the right."""
    width = _paper(view).inner_width
    left = width - (_CODE + letters.space if view.address else 0.0)
    note = [Run(view.words.draft_note, bold=True)] if view.status == "draft" else []
    rows = [text_block((Run(view.title, bold=True),), left, letters.signal, role="title")]
    if view.about:
        rows.append(text_block((Run(view.about),), left, letters.text, gap=letters.gap))
    if note or view.identity:
        identity = [*note, *([Run(view.identity)] if view.identity else [])]
        rows.append(text_block(identity, left, letters.text, gap=letters.gap))
    text = stacked(rows)
    if view.address:
        code = code_of(view.address, _CODE, view.words.qr_code)
        text = abreast((text, Block(_CODE, ((0.0, 0.0, code),))), (0.0, width - _CODE))
    return _ruled_under(text, width, letters)


def _running(view: PaperView, letters: Letters) -> Block:
    """The head of a page that goes on."""
    width = _paper(view).inner_width
    runs = [Run(f"{view.title} ({view.words.continued})", bold=True), Run(view.identity)]
    return _ruled_under(text_block(runs, width, letters.text), width, letters)


def _ruled_under(text: Block, width: float, letters: Letters) -> Block:
    down = text.height + 0.5 * letters.gap
    rule = Box(0.0, 0.0, width, letters.bar, fill="black")
    return Block(down + letters.bar + letters.gap, (*text.parts, (0.0, down, rule)), split=text.split)


def _foot(view: PaperView, number: int, count: int, letters: Letters) -> Block:
    """The caution, and which page of how many."""
    width = _paper(view).inner_width
    runs = [Run(f"{number}/{count}", bold=True), Run(view.caution), Run(view.address_shown)]
    text = text_block([run for run in runs if run.text], width, letters.text)
    rule = Box(0.0, 0.0, width, letters.hair, fill="black")
    down = letters.gap
    return Block(down + text.height, ((0.0, 0.0, rule), (0.0, down, text)), split=text.split)


def _sheet(view: PaperView, pages: Sequence[Sequence[Block]], number: int, letters: Letters) -> Sheet:
    sheet = _paper(view)
    margin = sheet.margin
    marks: list[Mark] = [across(sheet, view.words.draft)] if view.status == "draft" else []
    top = _running(view, letters) if number else _head(view, letters)
    marks += marks_of(top, margin, margin)
    y = margin + top.height
    for block in pages[number]:
        y += block.gap
        marks += marks_of(block, margin, y)
        y += block.height
    foot = _foot(view, number + 1, len(pages), letters)
    marks += marks_of(foot, margin, sheet.height - margin - foot.height)
    return Sheet(view.title, view.language, sheet.width, sheet.height, tuple(marks))
