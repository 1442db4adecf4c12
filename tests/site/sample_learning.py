"""How the sample procedure is learnt, and its two issues."""

from generator.views.learning import CheckQuestionView, LearningView, TrainingView
from generator.views.posted import ChangeView, IssueView, StandingView
from generator.views.shown import FactView, LinkView

_PAGE = "procedures/copper-the-holes"
_ETCH = "Micro-etch: 50 s, now 40 s"
LEARNING = LearningView(
    (FactView("Line check-off", "valid for 12 months, given by the duty technician"),),
    (LinkView("The hazards of this procedure", f"{_PAGE}/hazards"), LinkView("Graphite", "places/black")),
    (
        CheckQuestionView(
            "black-in",
            "Which two things must not be on the board here?",
            "Water and salts from mains water.",
            "Both spoil the graphite.",
            LinkView("step 25", _PAGE, "black-in"),
        ),
    ),
    TrainingView(3, "K7Q2-M9XA", ("Line check-off",), ((3, "time", _ETCH),)),
)
STANDING = StandingView(
    issue="3, posted 25 November 2026",
    code="K7Q2-M9XA",
    history=(
        IssueView("3", "25 November 2026", "Thinner copper.", "Approved.", (ChangeView("time", _ETCH),)),
        IssueView("2", "3 June 2026", "First full run.", "Approved by the course instructor."),
    ),
)
