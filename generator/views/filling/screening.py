"""What a composition implies, with its arithmetic, beside what is declared; or why it was not worked out."""

from generator.hazards import (
    Edition,
    Evidence,
    NotScreened,
    Screening,
    Share,
    Step,
    covered_by,
    label_statements,
    statement_text,
    undeclared_classes,
)
from generator.study import LabStudy
from generator.units import show_number
from generator.views.chemical import ScreeningRowView, ScreeningView, ShareView, StatementView
from generator.views.filling.words import joined, thing_title

REFUSED = "Nothing follows from this about the hazards. The supplier’s sheets and the safety office decide."


def screening_view(
    study: LabStudy, declared: tuple[str, ...], screening: Screening | NotScreened | None
) -> ScreeningView | None:
    """The screening of a mixture; None where nothing is said of what it is made of."""
    if screening is None:
        return None
    edition = Edition(study.lab.lab.ghs)
    if isinstance(screening, NotScreened):
        said = "; ".join(f"{one.message} {one.fix}".strip() for one in screening.problems)
        return ScreeningView((), (), (), "", REFUSED, said)
    codes = tuple(code for code in declared if code[:1] in "HE")
    return ScreeningView(
        tuple(StatementView(code, statement_text(code, edition) or "") for code in _implied(screening)),
        tuple(_row(study, step) for step in screening.steps),
        tuple(f"{_named(study, one.about)}: {one.why}" for one in screening.unknown),
        screening.source,
        screening.caution,
        declared=tuple(StatementView(line.code, line.text) for line in label_statements(codes, edition)),
        undeclared=_undeclared(screening, codes),
        only_declared=_only_declared(screening, codes),
        shares=tuple(_share(study, one) for one in screening.shares),
    )


def _implied(screening: Screening) -> tuple[str, ...]:
    return (*screening.statements, *screening.supplements)


def _undeclared(screening: Screening, codes: tuple[str, ...]) -> str:
    found = undeclared_classes(screening, codes)
    if not found:
        return ""
    named = joined(dict.fromkeys(f"{one.name} ({one.code})" for one in found))
    return f"The composition implies {named}, which is not declared."


def _only_declared(screening: Screening, codes: tuple[str, ...]) -> str:
    implied = _implied(screening)
    left = [code for code in codes if not covered_by(code, implied)]
    if not left:
        return ""
    return (
        f"Declared, and not found by the sums: {joined(left)}. The declaration stands: tests, experience and "
        "what a bath takes up in use are not in its composition."
    )


def _row(study: LabStudy, step: Step) -> ScreeningRowView:
    terms = " + ".join(f"{term.working} ({_named(study, term.name)})" for term in step.terms)
    sum_ = f"{terms} = {show_number(step.total, digits=4)}" if terms else ""
    return ScreeningRowView(
        f"{step.rule} ({step.clause})", sum_, step.limit, step.outcome, f"limit {step.evidence.words}"
    )


def _share(study: LabStudy, one: Share) -> ShareView:
    share = "not known" if one.percent is None else f"{show_number(one.percent, digits=4)} %"
    return ShareView(_named(study, one.ingredient.name), share, one.says, _evidence(one))


def _evidence(one: Share) -> str:
    evidence: Evidence | None = one.ingredient.evidence
    if one.ingredient.classes is None:
        return "hazards not declared"
    if evidence is None:
        return "as this lab declares it"
    return f"classes and limits {evidence.words}"


def _named(study: LabStudy, name: str) -> str:
    lab = study.lab
    return thing_title(lab, name) if name in lab.substances or name in lab.mixtures else name
