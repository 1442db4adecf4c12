"""The fixed words of a wall card, one table a language; an author's own text is never looked up here."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, eq=False)
class CardWords:
    """Labels in capitals where they stand before a text, verbs by `do`, marks by kind.

    Each language has one table, so tables are compared by identity.
    """

    language: str
    wear: str
    stop: str
    danger: str
    warning: str
    hazards: str
    call: str
    emergency: str
    eyewash: str
    shower: str
    spill_kit: str
    first_aid: str
    extinguisher: str
    see: str
    before: str
    if_not: str
    then_call: str
    only_call: str
    hold: str
    alarm: str
    set: str
    limit: str
    not_before: str
    into: str
    who: str
    amounts: str
    target: str
    repeat: str
    on: str
    off: str
    change: str
    extraction: str
    rack: str
    rock: str
    book: str
    pause: str
    card: str
    issue: str
    check_code: str
    good_until: str
    draft: str
    draft_note: str
    do_not_use: str
    withdrawn: str
    scan: str
    continued: str
    sign: str
    qr_code: str
    unattended: str
    since_when: str
    until_when: str
    whose: str
    caution: str
    verbs: Mapping[str, str]
    marks: Mapping[str, str]


ENGLISH = CardWords(
    language="en",
    wear="WEAR",
    stop="STOP",
    danger="DANGER",
    warning="WARNING",
    hazards="HAZARDS",
    call="CALL",
    emergency="EMERGENCY",
    eyewash="EYEWASH",
    shower="SHOWER",
    spill_kit="SPILL KIT",
    first_aid="FIRST AID",
    extinguisher="EXTINGUISHER",
    see="SEE",
    before="FIRST SEE",
    if_not="IF NOT",
    then_call="Then CALL.",
    only_call="CALL.",
    hold="WAIT FOR",
    alarm="ALARM",
    set="SET",
    limit="IN TIME",
    not_before="NOT BEFORE",
    into="WASTE INTO",
    who="DONE BY",
    amounts="USE",
    target="INTO",
    repeat="REPEAT",
    on="PUT ON",
    off="TAKE OFF",
    change="CHANGE",
    extraction="EXTRACTION",
    rack="RACK",
    rock="SHAKE",
    book="BOOK AT",
    pause="MAY STOP",
    card="Card",
    issue="issue",
    check_code="check code",
    good_until="good until",
    draft="DRAFT",
    draft_note="DRAFT. Not for use at the bench.",
    do_not_use="DO NOT USE",
    withdrawn="This card is withdrawn. Take it down.",
    scan="Is this card current? Scan, then compare issue and check code.",
    continued="continued",
    sign="Sign",
    qr_code="QR code: opens the page that says whether this card is current",
    unattended="RUNNING UNATTENDED",
    since_when="Left at",
    until_when="Back by",
    whose="Left by",
    caution=(
        "The supplier's safety data sheet, the safety office, local codes and licensed practice"
        " stand above this card."
    ),
    verbs=MappingProxyType(
        {
            "wear": "WEAR", "open": "OPEN", "close": "CLOSE", "put-in": "PUT IN", "take-out": "TAKE OUT",
            "rinse": "RINSE", "dry": "DRY", "clean": "CLEAN", "empty": "EMPTY", "mount": "MOUNT",
            "set": "SET", "switch-off": "SWITCH OFF", "claim": "BOOK", "save": "SAVE", "release": "FREE",
            "check": "LOOK", "hold": "WAIT", "weigh": "WEIGH", "add": "ADD", "mix": "MIX", "pour": "POUR",
            "heat": "HEAT", "cool": "COOL", "wait": "WAIT", "act": "DO",
        }
    ),
    marks=MappingProxyType(
        {
            "dry": "goes in DRY", "wet": "goes in WET", "last-mains": "LAST mains water",
            "hands": "stay HERE", "near": "stay NEAR", "away": "may be LEFT",
            "current-first": "CURRENT FIRST",
        }
    ),
)  # fmt: skip

SPANISH = CardWords(
    language="es",
    wear="LLEVE PUESTO",
    stop="PARE",
    danger="PELIGRO",
    warning="ATENCIÓN",
    hazards="PELIGROS",
    call="LLAME A",
    emergency="EMERGENCIA",
    eyewash="LAVAOJOS",
    shower="DUCHA",
    spill_kit="KIT DE DERRAMES",
    first_aid="BOTIQUÍN",
    extinguisher="EXTINTOR",
    see="VEA",
    before="VEA PRIMERO",
    if_not="SI NO",
    then_call="Después, LLAME.",
    only_call="LLAME.",
    hold="ESPERE A",
    alarm="ALARMA",
    set="AJUSTE",
    limit="A TIEMPO",
    not_before="NO ANTES DE",
    into="RESIDUO A",
    who="LO HACE",
    amounts="USE",
    target="EN",
    repeat="REPITA",
    on="PÓNGASE",
    off="QUÍTESE",
    change="CÁMBIESE",
    extraction="EXTRACCIÓN",
    rack="SOPORTE",
    rock="AGITE",
    book="RESERVE EN",
    pause="PUEDE PARAR",
    card="Tarjeta",
    issue="edición",
    check_code="código",
    good_until="válida hasta",
    draft="BORRADOR",
    draft_note="BORRADOR. No usar en el puesto.",
    do_not_use="NO USAR",
    withdrawn="Esta tarjeta está retirada. Quítela.",
    scan="¿Está vigente? Escanee y compare edición y código.",
    continued="sigue",
    sign="Señal",
    qr_code="Código QR: abre la página que dice si esta tarjeta está vigente",
    unattended="EN MARCHA SIN VIGILANCIA",
    since_when="Desde",
    until_when="Vuelta a",
    whose="Persona",
    caution=(
        "La ficha de seguridad del proveedor, la oficina de seguridad, las normas locales y la práctica"
        " autorizada están por encima de esta tarjeta."
    ),
    verbs=MappingProxyType(
        {
            "wear": "PÓNGASE", "open": "ABRA", "close": "CIERRE", "put-in": "META", "take-out": "SAQUE",
            "rinse": "ENJUAGUE", "dry": "SEQUE", "clean": "LIMPIE", "empty": "VACÍE", "mount": "MONTE",
            "set": "AJUSTE", "switch-off": "APAGUE", "claim": "RESERVE", "save": "GUARDE",
            "release": "LIBERE", "check": "MIRE", "hold": "ESPERE", "weigh": "PESE", "add": "AÑADA",
            "mix": "MEZCLE", "pour": "VIERTA", "heat": "CALIENTE",
            "cool": "ENFRÍE", "wait": "ESPERE", "act": "HAGA",
        }
    ),
    marks=MappingProxyType(
        {
            "dry": "entra SECA", "wet": "entra MOJADA", "last-mains": "ÚLTIMA agua de red",
            "hands": "quédese AQUÍ", "near": "quédese CERCA", "away": "puede QUEDAR SOLO",
            "current-first": "PRIMERO LA CORRIENTE",
        }
    ),
)  # fmt: skip

CARD_WORDS: tuple[CardWords, ...] = (ENGLISH, SPANISH)


def card_words(language: str) -> CardWords:
    """The table of a BCP 47 tag by its first part; English where none is shipped."""
    first = language.split("-")[0].lower()
    return next((words for words in CARD_WORDS if words.language == first), ENGLISH)
