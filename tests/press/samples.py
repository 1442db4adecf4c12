"""Cards of the invented Larkmere lab, written out by hand as the view builder will one day make them."""

from dataclasses import replace
from typing import Any

from generator.views.card import CardHazard, CardHelp, CardMark, CardStep, CardTable, CardView, CardWear
from generator.views.card_words import ENGLISH, SPANISH, CardWords

BASE_WEAR = (
    CardWear("M004", "Indirect-vent splash goggles"),
    CardWear("M010", "Buttoned lab coat"),
    CardWear("M008", "Closed leather shoes"),
)
ACID_WEAR = (
    *BASE_WEAR,
    CardWear("M009", "Nitrile gloves"),
    CardWear("M026", "Chemical apron"),
    CardWear("M009", "Long chemical gauntlets over nitrile"),
    CardWear("M013", "Face shield over goggles"),
)
HELP = (
    CardHelp("CALL", "Duty technician: room B12 or extension 417"),
    CardHelp("EMERGENCY", "Campus emergency line, extension 800"),
    CardHelp("EYEWASH", "left of the door, six paces from the copper cell"),
    CardHelp("SHOWER", "corridor side of the door"),
)
STOP = (
    "If you are unsure, current off first. Then board out, lid on, call the technician."
    " A stopped job is never marked down."
)
ETCH_HAZARDS = (
    CardHazard("W023", "Causes severe skin burns and eye damage"),
    CardHazard("W001", "May cause allergy or asthma if breathed in"),
    CardHazard("W001", "May cause an allergic skin reaction"),
    CardHazard("W001", "Very toxic to aquatic life"),
)
ACID_HAZARDS = (
    CardHazard("W023", "Causes severe skin burns and eye damage"),
    CardHazard("W001", "Very toxic to aquatic life"),
)
NO_BREAK = "\u00a0"
CALL = "Duty technician"
SPRAY = "Deionised spray over the catch tray"


def step(number: int, id: str, verb: str, sentence: str, place: str = "", **more: Any) -> CardStep:
    """One row; a place is written "5 Micro-etch" or, without a number, "Light table"."""
    first, _, rest = place.partition(" ")
    numbered = first.isdigit()
    return CardStep(
        id, str(number), ENGLISH.verbs[verb], sentence,
        place_number=first if numbered else "", place_title=rest if numbered else place, **more,
    )  # fmt: skip


RECEIVE = (
    step(1, "plan", "check", "Look at the session clock.",
         check="the finish time is before pack-up", if_not="Book another session.", call=CALL),
    step(2, "card-check", "check", "Compare the issue and the check code on the wall card with this page.",
         check="both are the same", if_not="Do not use the card.", call=CALL),
    step(3, "save-job", "save", "Save the drill job. Write what the job slip asks for.", "Router-drill"),
    step(4, "dust-off", "clean", "Vacuum both faces before you lift the board.", "Router-drill",
         container="Bag of the drill's vacuum"),
    step(5, "free-drill", "release",
         "Take the board off the pins. Clear the bed. Turn the door slot to FREE.", "Router-drill"),
    step(6, "wash-dust", "rinse", "Rinse at the sink.", "Sink", dwell_shown="60 s",
         marks=(CardMark("last-mains", "LAST mains water"),), container="Sink drain with silt trap"),
    step(7, "see-light", "check", "Hold the board over the light table. Look through every hole.",
         "Light table", check="light comes through every hole",
         if_not="Stand behind the shield. Blow the dark hole from the drill-exit side."
                " Then step 7 again, twice at most.", call=CALL),
)  # fmt: skip

ETCH = (
    step(33, "set-sum", "hold", "Read current and time from the job slip. Your buddy works the sum again.",
         hold="second person: both answers agree within 5 %"),
    step(34, "etch-wear", "wear", "Put on fresh thin gloves, apron, gauntlets and face shield.",
         container="Solid waste bag"),
    step(35, "buddy-here", "hold", "Ask your buddy to stand where they can see you.",
         hold="second person: buddy says READY"),
    step(36, "open-5", "open", "Lid off.", "5 Micro-etch",
         check="liquid above the notch, paler than the strip, card behind the window readable; 20 to 28 °C",
         if_not="Vented lid on.", call=CALL),
    step(37, "etch-in", "put-in", "Lower the board in. Stay and count.", "5 Micro-etch",
         dwell_shown="40 s", window_shown="30 to 60 s",
         marks=(CardMark("dry", "goes in DRY"), CardMark("hands", "stay HERE")),
         alarm="Lift the board. Go straight to the spray."),
    step(38, "etch-out", "take-out", "Let it drip over the bath.", "5 Micro-etch", dwell_shown="8 s"),
    step(39, "rinse-5", "rinse", "Spray both sides and your gauntlets over the tray.", SPRAY,
         dwell_shown="100 s", window_shown="at least 90 s", container="Etch drum"),
    step(40, "close-5", "close", "Vented lid on.", "5 Micro-etch"),
    step(41, "tray-5", "empty", "Empty the tray into the etch drum. Rinse the tray.", SPRAY,
         container="Etch drum"),
    step(42, "see-pink", "check", "Look at the wet copper. Keep it wet.", "Light table",
         check="even matt pink, no grey smear, water film unbroken",
         if_not="Dry both faces with cool air. Then step 36 again, once.", call=CALL),
)  # fmt: skip

PLATE = (
    step(43, "rack-hook", "mount", "Move the WET board to the hook rack. Both edges touch."
         " Hang the coupon beside it."),
    step(44, "open-6", "open", "Rectifier OFF. Lid off.", "6 Copper cell",
         check="the meter reads no current; liquid two fingers above the anode bags; 21 to 26 °C",
         if_not="Lid on.", call=CALL),
    step(45, "copper-in", "put-in", "Hang the WET board in the middle. Rock it. Bring the current up.",
         "6 Copper cell", dwell_shown="54 min", window_shown="20 to 90 min",
         marks=(CardMark("wet", "goes in WET"), CardMark("current-first", "CURRENT FIRST")),
         setting="constant current, 5.0 A, up in 60 s; see the table", limit="within 8 min of step 39",
         alarm="Current to zero FIRST. Then lift.",
         check="every 15 min: current within 0.3 A of the setting, stirring on",
         if_not="Current to zero.", call=CALL),
    step(46, "power-down", "switch-off", "Turn the current to zero. Wait until the meter shows it.",
         "6 Copper cell"),
    step(47, "copper-out", "take-out", "Lift slowly. Let it drip over the bath.", "6 Copper cell",
         dwell_shown="30 s"),
    step(48, "close-6", "close", "Lid on.", "6 Copper cell"),
    step(49, "rinse-6", "rinse", "Spray both sides, the rack and your gauntlets over the tray.", SPRAY,
         dwell_shown="120 s", window_shown="at least 90 s", container="Copper acid drum"),
    step(50, "tray-6", "empty", "Empty the tray into the copper acid drum. Rinse the tray.", SPRAY,
         container="Copper acid drum"),
    step(51, "dry-6", "dry", "Dry both faces and every hole with cool air.", "Cool-air blower"),
    step(52, "unwear", "wear", "Wipe the light table. Gauntlets, shield, apron and thin gloves off."
         " Wash your hands.", container="Solid waste bag"),
)  # fmt: skip

RECKONER = CardTable(
    "Current for your board, at 1.9 A/dm²",
    ("area", "2.0 dm²", "2.2 dm²", "2.4 dm²", "2.6 dm²", "2.8 dm²"),
    (("current", "3.9 A", "4.3 A", "4.7 A", "5.1 A", "5.4 A"),),
    "Area is both faces and the hole walls. Never above 12 A.",
    step="copper-in",
)

COMMON: dict[str, Any] = {
    "procedure": "copper-the-holes",
    "procedure_title": "Copper the holes of a two-sided board",
    "lab_title": "Larkmere Technical College, room B14",
    "language": "en",
    "dated": "2026-11-25",
    "status": "posted",
    "issue": "7",
    "check_code": "4F2A-9C81",
    "good_until": "2027-11-25",
    "stop_rule": STOP,
    "help": HELP,
    "caution": ENGLISH.caution,
}


def _card(card: str, title: str, **more: Any) -> CardView:
    address = f"https://b14.larkmere.example/cards/current/?card={card}&issue=7&code=4F2A-9C81"
    shown = f"b14.larkmere.example/cards/{card}"
    return CardView(card=card, title=title, address=address, address_shown=shown, **{**COMMON, **more})


def drill_card() -> CardView:
    """A4 at one metre."""
    return _card("drill-card", "Drill card", size="A4", read_from=1000.0, wear=BASE_WEAR, steps=RECEIVE,
                 help=HELP[:2])  # fmt: skip


def etch_card() -> CardView:
    """A3 at a metre and a half."""
    return _card("etch-card", "Etch card", size="A3", read_from=1500.0, wear=ACID_WEAR, steps=ETCH,
                 stations=("5",), signal="DANGER", hazards=ETCH_HAZARDS)  # fmt: skip


def copper_card() -> CardView:
    """A3 at a metre and a half, with a table."""
    return _card("copper-card", "Copper card", size="A3", read_from=1500.0, wear=ACID_WEAR, steps=PLATE,
                 stations=("6",), signal="DANGER", hazards=ACID_HAZARDS, tables=(RECKONER,))  # fmt: skip


def whole_card() -> CardView:
    """Three stages on one sheet: more than it can hold."""
    stages = (("receive", "Receive", RECEIVE), ("etch", "Micro-etch", ETCH), ("plate", "Plate", PLATE))
    staged = tuple(replace(row, stage=id, stage_title=title) for id, title, rows in stages for row in rows)
    return replace(copper_card(), card="whole-card", title="Whole card", steps=staged)


def door_card() -> CardView:
    """A visitor's card: no steps."""
    hazards = (*ETCH_HAZARDS[:2], CardHazard("W017", "Hot surface"), CardHazard("W012", "Electricity"))
    return _card("door-card", "Visitors", size="A3", read_from=2000.0, wear=BASE_WEAR, signal="DANGER",
                 hazards=hazards)  # fmt: skip


_SPANISH: dict[str, tuple[str, dict[str, Any]]] = {
    "set-sum": ("Lea la corriente y el tiempo en la hoja de trabajo. Su compañero repite el cálculo.",
                {"hold": "segunda persona: las dos respuestas coinciden, ±5 %"}),
    "etch-wear": ("Póngase guantes finos nuevos, delantal, guantes largos y pantalla facial.",
                  {"container": "Bolsa de residuos sólidos"}),
    "buddy-here": ("Pida a su compañero que se ponga donde pueda verle.",
                   {"hold": "segunda persona: el compañero dice LISTO"}),
    "open-5": ("Quite la tapa.", {
        "check": "líquido por encima de la muesca, más pálido que la tira, se lee la tarjeta detrás de la"
                 " ventana; 20 a 28 °C", "if_not": "Ponga la tapa ventilada."}),
    "etch-in": ("Baje la placa. Quédese y cuente.", {
        "alarm": "Levante la placa. Vaya directamente a la ducha.",
        "marks": (CardMark("dry", "entra SECA"), CardMark("hands", "quédese AQUÍ"))}),
    "etch-out": ("Deje gotear la placa sobre el baño.", {}),
    "rinse-5": ("Rocíe los dos lados y sus guantes largos sobre la bandeja.",
                {"container": "Bidón de grabado"}),
    "close-5": ("Ponga la tapa ventilada.", {}),
    "tray-5": ("Vacíe la bandeja en el bidón de grabado. Enjuague la bandeja.",
               {"container": "Bidón de grabado"}),
    "see-pink": ("Mire el cobre mojado. Manténgalo mojado.", {
        "check": "rosa mate uniforme, sin mancha gris, película de agua entera",
        "if_not": "Seque los dos lados con aire frío. Después, otra vez el paso 36, una sola vez."}),
}  # fmt: skip
_PLACES = {
    "Micro-etch": "Micrograbado", SPRAY: "Ducha desionizada sobre la bandeja", "Light table": "Mesa de luz",
}  # fmt: skip
_WINDOWS = {"30 to 60 s": "30 a 60 s", "at least 90 s": "al menos 90 s"}
_WORN = {
    "Indirect-vent splash goggles": "Gafas estancas", "Buttoned lab coat": "Bata abrochada",
    "Closed leather shoes": "Zapatos cerrados de cuero", "Nitrile gloves": "Guantes de nitrilo",
    "Chemical apron": "Delantal químico", "Face shield over goggles": "Pantalla facial sobre las gafas",
    "Long chemical gauntlets over nitrile": "Guantes largos sobre los de nitrilo",
}  # fmt: skip


def _in_spanish(row: CardStep, words: CardWords) -> CardStep:
    sentence, more = _SPANISH[row.id]
    verb = next(words.verbs[key] for key, verb in ENGLISH.verbs.items() if verb == row.verb)
    return replace(
        row, sentence=sentence, verb=verb, place_title=_PLACES.get(row.place_title, row.place_title),
        window_shown=_WINDOWS.get(row.window_shown, row.window_shown),
        call="Técnico de guardia" if row.call else "", **more,
    )  # fmt: skip


def spanish_card() -> CardView:
    """The etch card in Spanish."""
    words = SPANISH
    return replace(
        etch_card(), card="etch-card-es", title="Tarjeta de micrograbado", language="es", words=words,
        procedure_title="Cobrear los agujeros de una placa de dos caras", caution=words.caution,
        wear=tuple(replace(piece, title=_WORN[piece.title]) for piece in ACID_WEAR), signal=words.danger,
        stop_rule="Si tiene dudas, primero corte la corriente. Después saque la placa, ponga la tapa y llame"
                  " al técnico.",
        help=(
            CardHelp(words.call, "Técnico de guardia: sala B12 o extensión 417"),
            CardHelp(words.emergency, "Línea de emergencia, extensión 800"),
            CardHelp(words.eyewash, "a la izquierda de la puerta, a seis pasos de la cuba de cobre"),
            CardHelp(words.shower, "junto a la puerta, del lado del pasillo"),
        ),
        hazards=(
            CardHazard("W023", "Provoca quemaduras graves en la piel y lesiones oculares graves"),
            CardHazard("W001", "Puede provocar alergia o asma si se inhala"),
            CardHazard("W001", "Puede provocar una reacción alérgica en la piel"),
            CardHazard("W001", "Muy tóxico para los organismos acuáticos"),
        ),
        steps=tuple(_in_spanish(row, words) for row in ETCH),
    )  # fmt: skip


def withdrawn_card() -> CardView:
    """The etch card taken down."""
    return replace(
        etch_card(), status="withdrawn",
        withdrawn="Withdrawn on 2026-11-20: the etch bath has a new mixture.",
    )  # fmt: skip
