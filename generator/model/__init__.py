"""What a lab is: its nouns, and the procedures worked in it."""

from generator.model.chemicals import KeepApart, Mixture, Portion, SmallAmount, Substance
from generator.model.given import FormulaRef, Number, Row, Value
from generator.model.lab import Lab
from generator.model.located import ID, MARKS, WHERE, Located, Text
from generator.model.people import Role, Signoff
from generator.model.places import NotRight, Place, Power, Rack, Residue, Timer
from generator.model.procedure import Accept, Card, Part, PartState, Procedure, Stage, Symptom, VendorPaper
from generator.model.readings import Leg, Reading
from generator.model.room import CalculatorSettings, Emergency, GlossaryEntry, Help, Room, Session
from generator.model.side import ClassFile, LanguageFile
from generator.model.step import Ask, Fail, Hold, Pause, Picture, PowerOn, Since, Step, Watch
from generator.model.verbs import VERBS
from generator.model.waste import Container, ToDrain
from generator.model.worn import HazardWord, Ppe

__all__ = [
    "ID",
    "MARKS",
    "VERBS",
    "WHERE",
    "Accept",
    "Ask",
    "CalculatorSettings",
    "Card",
    "ClassFile",
    "Container",
    "Emergency",
    "Fail",
    "FormulaRef",
    "GlossaryEntry",
    "HazardWord",
    "Help",
    "Hold",
    "KeepApart",
    "Lab",
    "LanguageFile",
    "Leg",
    "Located",
    "Mixture",
    "NotRight",
    "Number",
    "Part",
    "PartState",
    "Pause",
    "Picture",
    "Place",
    "Portion",
    "Power",
    "PowerOn",
    "Ppe",
    "Procedure",
    "Rack",
    "Reading",
    "Residue",
    "Role",
    "Room",
    "Row",
    "Session",
    "Signoff",
    "Since",
    "SmallAmount",
    "Stage",
    "Step",
    "Substance",
    "Symptom",
    "Text",
    "Timer",
    "ToDrain",
    "Value",
    "VendorPaper",
    "Watch",
]
