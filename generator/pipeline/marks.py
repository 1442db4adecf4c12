"""The mark of a card beside its content: draft, posted or withdrawn, issue, check code, QR code."""

from collections.abc import Callable
from dataclasses import replace

from generator.model import Card
from generator.pipeline.contents import card_code
from generator.pipeline.posted_problems import review_due
from generator.pipeline.standing import Shown
from generator.study import Study
from generator.views.addresses import current_card_query
from generator.views.card import CardView

Mark = Callable[[Study, Card, CardView], CardView]


def card_marks(shown: Shown, site: str) -> Mark:
    """Marks cards as their procedures stand; `site` is the address of the site, with its last slash."""

    def mark(study: Study, card: Card, view: CardView) -> CardView:
        standing = shown.of(study)
        issue, code = standing.card(study, card)
        # A card that the newest issue does not have yet is a draft, whatever its procedure is.
        status = standing.status if issue else "draft"
        code = code or card_code(view)
        head, gone = standing.head, standing.withdrawn
        due = review_due(study.procedure, head) if head and status == "posted" else None
        query = current_card_query(view.procedure, view.card, issue or "draft", code)
        return replace(
            view,
            status=status,
            issue=issue,
            check_code=code,
            good_until=due.isoformat() if due else "",
            dated=head.posted.isoformat() if head and status != "draft" else view.dated,
            address=f"{site}{query}",
            withdrawn=f"{gone.withdrawn.isoformat()}: {gone.because}"
            if gone and status == "withdrawn"
            else "",
        )

    return mark
