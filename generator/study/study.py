"""One frozen record of a procedure, and one of its lab: what rules judge and views show."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from generator.model import Container, Lab, LanguageFile, Mixture, Place, Procedure, Role, Stage, Step, Text
from generator.model.translation import sentences_of
from generator.study.answers import Answers
from generator.study.sentences import Said, of_equipment, of_lab, of_procedure, of_step
from generator.study.uses import Uses
from generator.sums import Sums
from generator.walk import Ground, Moment, Totals, Walk, totals, walk_through


class Located(NamedTuple):
    """A step with its stage; `mends` is the step whose failed check it mends, where it is a mend."""

    step: Step
    stage: Stage
    mends: Step | None = None


@dataclass(frozen=True, eq=False)
class LabStudy:
    """The lab with its look-ups; `pictures` are the files there are; `today` is given, never asked.

    `uses` are by procedure what the rules of the whole lab ask; a procedure's own study has none.
    """

    lab: Lab
    today: datetime.date
    pictures: frozenset[str] = frozenset()
    uses: Mapping[str, Uses] = field(default_factory=dict)
    answers: Answers = field(default_factory=Answers, repr=False)

    def place(self, id: str | None) -> Place | None:
        """The place of an id, or None."""
        return self.lab.places.get(id) if id else None  # type: ignore[call-overload]

    def role(self, id: str | None) -> Role | None:
        """The role of an id, or None."""
        return self.lab.roles.get(id) if id else None  # type: ignore[call-overload]

    def container(self, id: str | None) -> Container | None:
        """The waste container of an id, or None."""
        return self.lab.waste.get(id) if id else None  # type: ignore[call-overload]

    def mixture_at(self, place: str | None) -> Mixture | None:
        """The mixture that a place holds, or None."""
        found = self.place(place)
        return self.lab.mixtures.get(found.holds) if found and found.holds else None

    def statements_of(self, id: str) -> tuple[str, ...]:
        """The hazard codes of a mixture or substance, as declared."""
        noun = self.lab.mixtures.get(id) or self.lab.substances.get(id)  # type: ignore[call-overload]
        return tuple(noun.hazards) if noun else ()


    @cached_property
    def said_at_equipment(self) -> tuple[Said, ...]:
        """Every sentence of the lab's places and timers."""
        return tuple(of_equipment(self.lab))

    @cached_property
    def said_in_lab(self) -> tuple[Said, ...]:
        """Every sentence of the lab that a page or a card may show."""
        return tuple(of_lab(self.lab, self.said_at_equipment))


@dataclass(frozen=True, eq=False)
class Study(LabStudy):
    """A procedure in its lab, its sums and its walk; `posted` are its posted issues by number."""

    procedure: Procedure = field(kw_only=True)
    sums: Sums = field(kw_only=True)
    walk: Walk = field(kw_only=True)
    class_of: Procedure | None = field(default=None, kw_only=True)
    languages: Mapping[str, LanguageFile] = field(default_factory=dict, kw_only=True)
    posted: Mapping[str, Procedure] = field(default_factory=dict, kw_only=True)

    @cached_property
    def placed(self) -> tuple[tuple[Moment, str, Place], ...]:
        """Every moment at a declared place, with the place's id and the place."""
        places = self.lab.places
        return tuple(
            (moment, str(at), place)
            for moment in self.walk.moments
            if (at := moment.step.at) and (place := places.get(at))
        )

    @cached_property
    def placed_by_verb(self) -> Mapping[str, list[tuple[Moment, str, Place]]]:
        """The same by what is done, each in the order walked."""
        verbs: dict[str, list[tuple[Moment, str, Place]]] = {}
        for row in self.placed:
            verbs.setdefault(row[0].step.do, []).append(row)
        return verbs

    @cached_property
    def totals(self) -> Totals:
        """What the straight run needs, by attention."""
        return totals(Ground(self.lab, self.procedure, self.sums), self.walk)

    def steps(self) -> tuple[Located, ...]:
        """Every step with its stage, mends behind the step that they mend."""
        return self._steps

    @cached_property
    def _steps(self) -> tuple[Located, ...]:
        return tuple(self._each_step())

    @cached_property
    def said_at_steps(self) -> tuple[Said, ...]:
        """Every sentence of every step, mends included."""
        return tuple(said for found in self._steps for said in of_step(found.step))

    @cached_property
    def said(self) -> tuple[Said, ...]:
        """Every sentence of the procedure."""
        return tuple(of_procedure(self.procedure, self.said_at_steps))

    @cached_property
    def sentences(self) -> Mapping[str, Text]:
        """Every sentence of the procedure by the path under which a translation names it."""
        return sentences_of(self.procedure)

    @cached_property
    def _by_id(self) -> Mapping[str, Step]:
        return {str(found.step.id): found.step for found in reversed(self._steps)}

    def _each_step(self) -> Iterator[Located]:
        for stage in self.procedure.stages:
            for step in stage.steps:
                yield Located(step, stage)
                if step.fail and step.fail.mend:
                    yield Located(step.fail.mend, stage, mends=step)

    def step(self, id: str) -> Step | None:
        """The step of an id, mends included, or None."""
        return self._by_id.get(id)

    def used_codes(self) -> tuple[str, ...]:
        """Hazard codes of all that the procedure's places hold and its steps use, each once."""
        return self._used_codes

    @cached_property
    def _used_codes(self) -> tuple[str, ...]:
        codes: dict[str, None] = {}
        for found in self.steps():
            place = self.place(found.step.at)
            for id in (*([place.holds] if place and place.holds else []), *found.step.use):
                codes.update(dict.fromkeys(self.statements_of(str(id))))
        return tuple(codes)


def study_lab(
    lab: Lab, uses: Mapping[str, Uses], pictures: frozenset[str], today: datetime.date
) -> LabStudy:
    """The lab's own study, for rules that need no procedure."""
    return LabStudy(lab, today, pictures, uses)


def study_procedure(
    lab: LabStudy, procedure: Procedure, sums: Sums, class_of: Procedure | None = None,
    languages: Mapping[str, LanguageFile] | None = None, posted: Mapping[str, Procedure] | None = None,
) -> Study:  # fmt: skip
    """A procedure's study: its sums worked out, then walked through every path."""
    walk = walk_through(lab.lab, procedure, sums)
    return Study(
        lab.lab,
        lab.today,
        lab.pictures,
        answers=lab.answers,
        procedure=procedure,
        sums=sums,
        walk=walk,
        class_of=class_of,
        languages=languages or {},
        posted=posted or {},
    )
