"""What a new student learns a procedure by: sign-offs, pages to read, questions, what changed since then."""

from dataclasses import dataclass

from generator.views.shown import FactView, LinkView


@dataclass(frozen=True, slots=True)
class CheckQuestionView:
    """A question to ask oneself, its answer, why it is so, and the step that it belongs to."""

    id: str
    question: str
    answer: str
    why: str
    at: LinkView


@dataclass(frozen=True, slots=True)
class TrainingView:
    """For the page's script: what is posted now, and each change with the number of its issue, newest first.

    `issue` is 0 and `code` "" for what was never posted; nobody can be trained on that.
    """

    issue: int
    code: str
    needs: tuple[str, ...]
    changes: tuple[tuple[int, str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class LearningView:
    """The learning path of one procedure."""

    needs: tuple[FactView, ...]
    read: tuple[LinkView, ...]
    questions: tuple[CheckQuestionView, ...]
    training: TrainingView
