"""The student's page of a procedure, from its study."""

from collections.abc import Iterator, Mapping

from generator.formulas import Formula
from generator.model import Stage
from generator.study import Study
from generator.units import show_counted, show_quantity, show_window
from generator.views.addresses import (
    card_path,
    day_plan_address,
    day_plan_path,
    door_sign_path,
    hazards_address,
    place_address,
    run_sheet_path,
)
from generator.views.filling.called import called
from generator.views.filling.job import job_view
from generator.views.filling.learning import learning_view, signoff_facts
from generator.views.filling.plan import must_rest, plan_view
from generator.views.filling.step import step_view
from generator.views.filling.telling import Telling, telling
from generator.views.filling.words import (
    call_view,
    low,
    named,
    role_title,
    spoken_time,
    thing_title,
    worn_sign,
)
from generator.views.posted import StandingView
from generator.views.procedure import (
    CardLinkView,
    DifferView,
    ProcedureView,
    StageView,
    SymptomView,
)
from generator.views.shown import BannerView, FactView, LinkView, SignView, SourceView


def procedure_view(
    study: Study,
    formulas: Mapping[str, Formula],
    banners: tuple[BannerView, ...] = (),
    files: frozenset[str] = frozenset(),
    strip: str = "",
    standing: StandingView | None = None,
    sources: Mapping[str, SourceView] | None = None,
) -> ProcedureView:
    """`files` are the paths of the site; a card that is not there is not listed. `sources` are by step."""
    procedure, lab = study.procedure, study.lab
    told = telling(study, formulas)
    stands = standing or StandingView()
    return ProcedureView(
        id=procedure.id,
        title=procedure.title,
        lead=_lead(study),
        stages=tuple(_stage(told, stage, stands, sources or {}) for stage in procedure.stages),
        stop_rule=procedure.stop_rule or "",
        call=call_view(lab, _called(study)),
        banners=(*banners, *stands.banners, *_out_of_use(study)),
        facts=(*_issue(stands), *_facts(study)),
        wear=tuple(_wear(told)),
        ready=tuple(_ready(study)),
        tell_us_first=tuple(map(str, procedure.tell_us_first)),
        limits=tuple(_limits(study)),
        plan=plan_view(study) if lab.lab.sessions else None,
        job=job_view(study, formulas),
        strip=strip,
        symptoms=tuple(_symptoms(told)),
        cards=tuple(_cards(study, files, stands)),
        differs=tuple(_differs(study)),
        standing=stands,
        hazards=LinkView("Hazards of this procedure", hazards_address(procedure.id)),
        learning=learning_view(told, stands),
        glossary=tuple((entry.term or named(str(id)), entry.means) for id, entry in lab.glossary.items()),
    )


def _lead(study: Study) -> str:
    procedure = study.procedure
    who = low(role_title(study.lab, procedure.who))
    with_whom = (
        f", with the {low(role_title(study.lab, procedure.also_present))}" if procedure.also_present else ""
    )
    return f"For the {who}{with_whom}."


def _called(study: Study) -> str:
    return called(study, (found.step for found in study.steps()), str(study.procedure.stop_rule or ""))


def _out_of_use(study: Study) -> Iterator[BannerView]:
    used = dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at)
    for id in used:
        place = study.place(id)
        if place and place.out_of_use:
            until = place.out_of_use.until
            when = f" until {until.day} {until:%B %Y}" if until else ""
            yield BannerView("out-of-use", f"{place.title} is out of use{when}", place.out_of_use.because)


def _facts(study: Study) -> Iterator[FactView]:
    procedure, lab = study.procedure, study.lab
    yield FactView("Who", role_title(lab, procedure.who))
    if procedure.also_present:
        yield FactView("Also present", role_title(lab, procedure.also_present))
    found = study.totals
    if found.all:
        yield FactView("Whole run", spoken_time(found.all), sum="plan.total")
        yield FactView("Hands-on", spoken_time(found.hands_on))
    yield from must_rest(study)
    yield FactView("Steps", str(len(procedure.steps)))
    yield FactView("Approved by", role_title(lab, procedure.approver))
    if procedure.review_every:
        yield FactView("Review", f"every {show_quantity(procedure.review_every)}")


def _issue(stands: StandingView) -> Iterator[FactView]:
    if stands.issue:
        yield FactView("Issue", stands.issue)
        yield FactView("Check code", stands.code)


def _stage(
    told: Telling, stage: Stage, stands: StandingView, sources: Mapping[str, SourceView]
) -> StageView:
    moments = [moment for moment in told.study.walk.straight if moment.stage is stage]
    seconds = sum(moment.after.clock.shortest - moment.before.clock.shortest for moment in moments)
    repeat = f"repeat for {show_counted(stage.repeat)}" if stage.repeat else ""
    marks = stands.marks
    steps = tuple(
        step_view(told, step, marks.get(str(step.id), ""), sources.get(str(step.id))) for step in stage.steps
    )
    return StageView(
        str(stage.stage), stage.title, steps, f"About {spoken_time(seconds)}" if seconds else "", repeat
    )


def _wear(told: Telling) -> Iterator[SignView]:
    """Every piece of the run with the steps between which it is worn; the base all the time."""
    lab, spans = told.study.lab, _spans(told)
    for base in lab.lab.base_wear:
        yield worn_sign(lab, str(base), "all the time")
    for piece, (first, last) in spans.items():
        yield worn_sign(
            lab, piece, f"from step {first} to step {last}" if first != last else f"at step {first}"
        )


def _spans(told: Telling) -> dict[str, tuple[str, str]]:
    spans: dict[str, tuple[str, str]] = {}
    for moment in told.study.walk.straight:
        number = told.numbers[str(moment.step.id)]
        for piece in (*moment.after.names("worn"), *moment.after.gloves()):
            if piece not in told.base:
                spans[piece] = (spans.get(piece, (number, number))[0], number)
    return spans


def _ready(study: Study) -> Iterator[FactView]:
    lab, procedure = study.lab, study.procedure
    yield from signoff_facts(study)
    if procedure.also_present:
        yield FactView(role_title(lab, procedure.also_present), "has said when they are free")
    shared = dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at)
    for id in shared:
        place = study.place(id)
        if place and place.shared:
            yield FactView(place.title, f"booked: {place.book}" if place.book else "free at that time")


def _limits(study: Study) -> Iterator[FactView]:
    for name, window in study.procedure.limits.items():
        yield FactView(named(str(name)), show_window(window))
    if study.procedure.not_for:
        yield FactView("Not for", study.procedure.not_for)


def _symptoms(told: Telling) -> Iterator[SymptomView]:
    for symptom in told.study.procedure.you_may_see:
        at = str(symptom.at or "")
        link = told.link(at) if at in told.numbers else None
        if link is None and told.study.place(at):
            link = LinkView(thing_title(told.study.lab, at), place_address(at))
        yield SymptomView(symptom.symptom, link, tuple(map(str, symptom.causes)), symptom.do_first or "")


def _cards(study: Study, files: frozenset[str], stands: StandingView) -> Iterator[CardLinkView]:
    tail = str(study.procedure.id).partition(".")[2]
    for card in study.procedure.cards:
        pdf, drawing = (card_path(study.procedure.id, str(card.id), kind) for kind in ("pdf", "svg"))
        if pdf in files:
            place = f", hangs at {low(thing_title(study.lab, str(card.post_at)))}" if card.post_at else ""
            detail = f"{card.size}, read from {show_quantity(card.read_from)}{place}"
            posted = stands.cards.get(f"{tail}/{card.id}" if tail else str(card.id), "")
            yield CardLinkView(card.title, detail, pdf, drawing if drawing in files else "", posted)
    yield from _other_paper(study, files)


def _other_paper(study: Study, files: frozenset[str]) -> Iterator[CardLinkView]:
    """The run sheet, the day plan, and the door signs of steps that are left running."""
    id = str(study.procedure.id)
    run_sheet = run_sheet_path(id)
    if run_sheet in files:
        yield CardLinkView("Run sheet", "planned and done, readings with their limits", run_sheet, "")
    plan = day_plan_path(id)
    if plan in files:
        words = "who has which part where, by the clock"
        yield CardLinkView("Day plan of a class", words, plan, "", words=day_plan_address(id))
    for found in study.steps():
        sign = door_sign_path(id, str(found.step.id))
        if sign in files:
            where = low(thing_title(study.lab, str(found.step.at))) if found.step.at else found.step.say
            yield CardLinkView("Door sign", f"hangs on the door while {where} runs unattended", sign, "")


def _differs(study: Study) -> Iterator[DifferView]:
    for paper in study.procedure.vendor_papers:
        decider = (
            f"Decided by the {low(role_title(study.lab, paper.decided_by))}"
            if paper.decided_by
            else "Not decided yet"
        )
        when = f", {paper.decided.day} {paper.decided:%B %Y}" if paper.decided else ""
        yield DifferView(paper.paper, paper.differs, paper.because or "", f"{decider}{when}.")
