"""Everything that a lab declares, as one frozen value."""

from typing import Annotated

from generator.model.chemicals import KeepApart, Mixture, Substance
from generator.model.located import Located
from generator.model.people import Role, Signoff
from generator.model.places import Place, Rack, Residue, Timer
from generator.model.procedure import Accept
from generator.model.room import CalculatorSettings, Emergency, GlossaryEntry, Room
from generator.model.scalars import Id, Listed, Name, Named
from generator.model.waste import Container
from generator.model.worn import HazardWord, Ppe


class Lab(Located):
    """The room and its nouns; an absent noun switches off the checks that need it."""

    lab: Room
    roles: Annotated[dict[Id, Role], Named]
    signoffs: Annotated[dict[Id, Signoff], Named] = {}
    ppe: Annotated[dict[Id, Ppe], Named] = {}
    hazard_words: Annotated[dict[Id, HazardWord], Named] = {}
    substances: Annotated[dict[Id, Substance], Named] = {}
    mixtures: Annotated[dict[Id, Mixture], Named] = {}
    places: Annotated[dict[Id, Place], Named] = {}
    racks: Annotated[dict[Id, Rack], Named] = {}
    timers: Annotated[dict[Id, Timer], Named] = {}
    residues: Annotated[dict[Id, Residue], Named] = {}
    waste: Annotated[dict[Id, Container], Named] = {}
    keep_apart: Annotated[tuple[KeepApart, ...], Listed] = ()
    emergencies: Annotated[tuple[Emergency, ...], Listed] = ()
    glossary: Annotated[dict[Id, GlossaryEntry], Named] = {}
    calculators: Annotated[dict[Name, CalculatorSettings], Named] = {}
    accept: Annotated[tuple[Accept, ...], Listed] = ()
