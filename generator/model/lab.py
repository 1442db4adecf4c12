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
    """The room itself: its name, sessions, help and rules."""
    roles: Annotated[dict[Id, Role], Named]
    """Who may do what and can be reached; cards print the role, never a name."""
    signoffs: Annotated[dict[Id, Signoff], Named] = {}
    """Trainings that a role may need, each with how long it is valid."""
    ppe: Annotated[dict[Id, Ppe], Named] = {}
    """What is worn, by the part of the body that it protects."""
    hazard_words: Annotated[dict[Id, HazardWord], Named] = {}
    """Hazards that no H statement names, beside those that ship."""
    substances: Annotated[dict[Id, Substance], Named] = {}
    """What is bought, with the statements of the supplier's sheet."""
    mixtures: Annotated[dict[Id, Mixture], Named] = {}
    """Baths and batches that are made here."""
    places: Annotated[dict[Id, Place], Named] = {}
    """Everything with a position: stations, machines, benches, sinks."""
    racks: Annotated[dict[Id, Rack], Named] = {}
    """What carries the part."""
    timers: Annotated[dict[Id, Timer], Named] = {}
    """What sounds, and what to do first when it does."""
    residues: Annotated[dict[Id, Residue], Named] = {}
    """What can ride on the part, on gloves or in a tray."""
    waste: Annotated[dict[Id, Container], Named] = {}
    """Where everything ends: jugs, drums, bags and drains."""
    keep_apart: Annotated[tuple[KeepApart, ...], Listed] = ()
    """Groups of substances that never meet."""
    emergencies: Annotated[tuple[Emergency, ...], Listed] = ()
    """What is done first when something happens, true for the whole room."""
    glossary: Annotated[dict[Id, GlossaryEntry], Named] = {}
    """One word for one thing, and the words that are not used for it."""
    calculators: Annotated[dict[Name, CalculatorSettings], Named] = {}
    """This lab's defaults, usual ranges and limits for the formulas."""
    accept: Annotated[tuple[Accept, ...], Listed] = ()
    """Warnings about the room that the lab lives with."""
