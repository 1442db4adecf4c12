"""The learning path of a procedure, from its study and what is posted."""

from collections.abc import Iterator

from generator.model import FormulaRef
from generator.study import Study
from generator.units import show_quantity
from generator.views.addresses import calculator_address, hazards_address, place_address
from generator.views.filling.telling import Telling
from generator.views.filling.words import low, role_title
from generator.views.learning import CheckQuestionView, LearningView, TrainingView
from generator.views.posted import StandingView
from generator.views.shown import FactView, LinkView


def learning_view(told: Telling, stands: StandingView) -> LearningView:
    """Sign-offs of the role, pages met on the way, the questions of the steps, the changes of every issue."""
    needs = tuple(signoff_facts(told.study))
    newest = stands.history[0] if stands.issue and stands.history else None
    changes = (
        (int(issue.number), change.kind, change.text) for issue in stands.history for change in issue.changes
    )
    training = TrainingView(
        int(newest.number) if newest else 0,
        stands.code,
        tuple(fact.label for fact in needs),
        tuple(changes) if newest else (),
    )
    return LearningView(needs, tuple(_read(told)), tuple(_questions(told)), training)


def signoff_facts(study: Study) -> Iterator[FactView]:
    """What the role of this procedure must be signed off for: how long it is valid, who gives it."""
    lab = study.lab
    role = study.role(str(study.procedure.who))
    for need in role.needs if role else ():
        signoff = lab.signoffs.get(need)
        if signoff:
            valid = f"valid for {show_quantity(signoff.valid)}" if signoff.valid else ""
            giver = f"given by the {low(role_title(lab, signoff.given_by))}" if signoff.given_by else ""
            yield FactView(signoff.title, ", ".join(part for part in (valid, giver) if part))


def _read(told: Telling) -> Iterator[LinkView]:
    study = told.study
    yield LinkView("The hazards of this procedure", hazards_address(study.procedure.id))
    for id in dict.fromkeys(str(step.at) for step in study.procedure.steps if step.at):
        place = study.place(id)
        if place:
            yield LinkView(place.title, place_address(id))
    refs = [step.for_ for step in study.procedure.steps if isinstance(step.for_, FormulaRef)]
    for name in dict.fromkeys(str(ref.formula) for ref in refs):
        if name in told.formulas:
            yield LinkView(told.formulas[name].title, calculator_address(name))


def _questions(told: Telling) -> Iterator[CheckQuestionView]:
    for step in told.study.procedure.steps:
        if step.ask:
            id = str(step.id)
            yield CheckQuestionView(id, step.ask.question, step.ask.answer, step.why or "", told.link(id))
