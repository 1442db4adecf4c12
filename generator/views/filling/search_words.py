"""What a procedure is found by in the search."""

from collections.abc import Iterator

from generator.study import Study
from generator.views.filling.words import joined, thing_title


def search_text(study: Study) -> str:
    """What a procedure is found by: its sentences, places, statements, CAS numbers and symptoms."""
    procedure, lab = study.procedure, study.lab
    texts: dict[str, None] = {}
    for found in study.steps():
        step = found.step
        place = study.place(step.at)
        for text in (step.say, step.check, place.title if place else None):
            texts[str(text)] = None
        for id in (*([place.holds] if place and place.holds else []), *step.use):
            texts.update(dict.fromkeys(_chemical_words(study, str(id))))
    for symptom in procedure.you_may_see:
        texts.update(dict.fromkeys((symptom.symptom, *symptom.causes)))
    texts.pop("None", None)
    stages = joined(stage.title for stage in procedure.stages)
    return "\n".join((f"{lab.lab.title or lab.lab.name}: {stages}", *texts))


def _chemical_words(study: Study, id: str) -> Iterator[str]:
    lab = study.lab
    yield " ".join((thing_title(lab, id), *study.statements_of(id)))
    mixture = lab.mixtures.get(id)  # type: ignore[call-overload]
    for part in (id, *(map(str, mixture.made_of) if mixture else ())):
        substance = lab.substances.get(part)
        if substance:
            yield f"{substance.title} {substance.cas or ''}".strip()
