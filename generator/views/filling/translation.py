"""A procedure's words in one language: the translation where there is one, else the base language."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.model import LanguageFile, Step
from generator.study import Study


@dataclass(frozen=True, slots=True)
class Words:
    """Look-ups of an author's words; nothing is ever invented, what lacks stands in the base language."""

    study: Study
    file: LanguageFile | None = None

    @property
    def language(self) -> str:
        """The BCP 47 tag of these words."""
        return str(self.file.language if self.file else self.study.lab.lab.language)

    def step(self, step: Step, field: str, base: str | None) -> str:
        """A step's field (`say`, `card`, `check`, `hold`, `why`) by the step's id."""
        found = _inside(self.file.steps if self.file else {}, str(step.id), field)
        return found or str(base or "")

    def sentence(self, step: Step) -> str:
        """What a card says for a step: its shorter words, else its sentence."""
        short = self.step(step, "card", None)
        if short or (self.file and _inside(self.file.steps, str(step.id), "say")):
            return short or self.step(step, "say", None)
        return str(step.card or step.say)

    def lab(self, noun: str, id: str, field: str, base: str | None) -> str:
        """A field of a noun of the lab (`places`, `roles`, `timers`, `ppe`, `waste`) by its id."""
        nouns = self.file.lab.get(noun) if self.file else None
        return (_inside(nouns, id, field) if isinstance(nouns, Mapping) else "") or str(base or "")

    def whole(self, field: str, base: str | None) -> str:
        """A sentence of the whole procedure: `title`, `stop_rule`."""
        return str((getattr(self.file, field, None) if self.file else None) or base or "")

    def stage(self, id: str, base: str) -> str:
        """The title of a stage."""
        return _inside(self.file.stages if self.file else {}, id, "title") or base

    def place(self, id: str | None) -> str:
        """The title of a place, empty without one."""
        place = self.study.place(id)
        return self.lab("places", str(id), "title", place.title) if place else ""

    def role(self, id: str | None) -> str:
        """The title of a role, empty without one."""
        role = self.study.role(id)
        return self.lab("roles", str(id), "title", role.title) if role else ""


def _inside(mapping: object, id: str, field: str) -> str:
    """A sentence two levels down, empty where there is none."""
    inner = mapping.get(id) if isinstance(mapping, Mapping) else None
    found = inner.get(field) if isinstance(inner, Mapping) else None
    return str(found) if isinstance(found, str) else ""
