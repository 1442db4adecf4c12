"""Finished views of every other kind of page, all of the invented college."""

from generator.problems import Level, RuleDoc
from generator.views.calculator import CalculatorView, ReckonerView, WorkedView
from generator.views.chemical import (
    AmountView,
    ChemicalView,
    HazardHeadingView,
    HazardItemView,
    HazardLineView,
    HazardSummaryView,
    LabelView,
    PictogramView,
    ScreeningRowView,
    ScreeningView,
    StatementView,
)
from generator.views.home import HomeView
from generator.views.index import GlossaryView, GroupView, IndexView, RowView, TermView
from generator.views.place import PlaceView
from generator.views.plan import BoxView, UnitView
from generator.views.posted import CopyView, CurrentCardView, PostedView, TickGroupView, TickView
from generator.views.report import FindingView, NotMadeView, ReportView
from generator.views.shown import BannerView, CallView, EmergencyView, FactView, LinkView, SignView

NB = "\N{NO-BREAK SPACE}"
COPPER_RUN = LinkView("Copper the holes of a two-sided board", "procedures/copper-the-holes")
CAUTION = (
    "A summary for the bench. The supplier’s safety data sheet, the safety office, local codes and licensed "
    "practice stand above it."
)
H314 = StatementView("H314", "Causes severe skin burns and eye damage")
H410 = StatementView("H410", "Very toxic to aquatic life with long lasting effects")
ACID_LABEL = LabelView(
    "Danger",
    (
        PictogramView("GHS05", "GHS05 Corrosion: corrodes skin, eyes or metal"),
        PictogramView("GHS09", "GHS09 Environment: harms life in water"),
    ),
    (H314, H410),
    (
        StatementView(
            "P280", "Wear protective gloves, protective clothing, eye protection and face protection."
        ),
    ),
    "As declared by the bath keeper from the sheets of what it is made of.",
)

PLACES = (
    PlaceView(
        "black",
        "3",
        "Graphite",
        (
            FactView("Temperature", f"19 to 26{NB}°C"),
            FactView("Time", f"5 to 9{NB}min"),
            FactView("The board comes in", "dry"),
            FactView("Room for", "2"),
            FactView("Kept by", "Bath keeper"),
        ),
        wear=(SignView("M009", "Nitrile gloves", "a fresh pair"), SignView("M026", "Chemical apron")),
        look="float between the two notches, stirrer turning",
        not_right="Lid on. Call the duty technician.",
        timer="Bench timer B",
        first="Press the timer top once, then lift the board straight away.",
        steps=(LinkView("Copper the holes, step 25", "procedures/copper-the-holes", "black-in"),),
        banners=(BannerView("out-of-use", "Out of use until 27 November 2026", "The stirrer is at repair."),),
        search_text="station 3 graphite bath <img src=x onerror=alert(1)>",
    ),
    PlaceView(
        "copper",
        "6",
        "Copper cell",
        (FactView("Supply", f"rectifier, at most 12{NB}A"),),
        hazards=(SignView("W023", "Acid copper bath"),),
        contents=LinkView("Acid copper bath", "mixtures/copper-mix"),
    ),
    PlaceView("light", "", "Light table", (FactView("Used for", "looking"),)),
)

CHEMICALS = (
    ChemicalView(
        "copper-mix",
        "mixture",
        "Acid copper bath",
        ACID_LABEL,
        facts=(FactView("Volume", f"42{NB}L"), FactView("pH", "up to 1"), FactView("Renew", "by analysis")),
        made_of=(
            AmountView("Copper(II) sulfate pentahydrate", f"72{NB}g/L"),
            AmountView(
                "Sulfuric acid 96 %",
                f"190{NB}g/L as H2SO4",
                LinkView("Sulfuric acid 96 %", "substances/sulfuric-acid-96"),
            ),
        ),
        headings=(
            HazardHeadingView("First action", (HazardLineView("Eyewash for 15 min.", "Eyes"),), "4"),
            HazardHeadingView("Never mix with", (HazardLineView("bases: heat and spray"),), "10"),
        ),
        wear=(SignView("M013", "Face shield over goggles"), SignView("M009", "Long chemical gauntlets")),
        if_contaminated="Current off first. Board out, lid on, red tag, call the bath keeper.",
        screening=ScreeningView(
            (H314,),
            (
                ScreeningRowView(
                    "skin", f"sulfuric acid 16.4{NB}% w/w", f"5{NB}% w/w", "H314, skin corrosion"
                ),
            ),
            ("the brightener is a bought mixture; its parts are not declared",),
            "UN GHS Rev. 10, chapter 3.2",
            "A screening from the composition, for whoever declares the hazards.",
        ),
        used_in=(COPPER_RUN,),
        caution=CAUTION,
        search_text="Acid copper bath H314 H410 copper sulfate 7758-99-8",
    ),
    ChemicalView(
        "sulfuric-acid-96",
        "substance",
        "Sulfuric acid 96 %",
        LabelView(
            "Danger",
            (PictogramView("GHS05", "GHS05 Corrosion: corrodes skin, eyes or metal"),),
            (StatementView("H290", "May be corrosive to metals"), H314),
            declared="As declared from the supplier’s sheet of 11 February 2026, yellow binder tab 4.",
        ),
        facts=(FactView("CAS number", "7664-93-9"), FactView("Strength", f"96{NB}% w/w")),
        caution=CAUTION,
        search_text="Sulfuric acid 96 % 7664-93-9 H290 H314 acid cupboard",
        search_tags=("H314", "7664-93-9"),
    ),
)

SUMMARY = HazardSummaryView(
    "copper-the-holes",
    "Hazards: copper the holes",
    COPPER_RUN,
    (
        HazardItemView(
            "copper-mix",
            "Acid copper bath",
            LinkView("its own page", "mixtures/copper-mix"),
            ACID_LABEL,
            "station 6, steps 45 to 49",
            headings=(
                HazardHeadingView(
                    "First action",
                    (HazardLineView("eyewash for 15 min.", "Eyes"), HazardLineView("shower.", "Skin")),
                    "4",
                ),
                HazardHeadingView("Fire", ()),
            ),
        ),
    ),
    words=(SignView("W017", "Hot surface", "Fixing oven"),),
    emergencies=(EmergencyView("splash in an eye", "Eyewash for 15 min."),),
    help=(FactView("Eyewash", "left of the door, six paces from the copper cell"),),
    caution=CAUTION,
)

HOME = HomeView(
    "Printed Circuits Lab",
    "Larkmere Technical College, room B14",
    "Campus emergency line, extension 800",
    (
        FactView("Eyewash", "left of the door, six paces from the copper cell"),
        FactView("Shower", "corridor side of the door"),
        FactView("Spill kit", "red bin under the micro-etch"),
    ),
    (
        CallView("Duty technician", f"room B12 or extension{NB}417", "then the course instructor"),
        CallView("College safety office", f"extension{NB}850, day and night"),
    ),
    (
        EmergencyView(
            "splash in an eye",
            f"Eyewash for 15{NB}min. The second person calls the emergency line.",
            "Fill in the incident report from the first-aid box.",
        ),
        EmergencyView("fire alarm", "Leave. Do not stop for the work.", "Tell the warden what is still on."),
    ),
    (FactView("Tuesday short lab", "13:10 to 16:05"), FactView("Thursday long lab", "10:00 to 16:40")),
    (SignView("M004", "Splash goggles"), SignView("M010", "Buttoned lab coat")),
    (RowView(COPPER_RUN, detail="Trained student, with a second person", end=f"4{NB}h 35{NB}min"),),
    (LinkView("All places", "places"), LinkView("Glossary", "glossary")),
)

INDEXES = (
    IndexView(
        "places",
        "Places",
        "The six numbered places are the line.",
        (
            GroupView(
                "The line",
                "the_line",
                (
                    RowView(
                        LinkView("Graphite", "places/black"), "3", "19 to 26 °C, board dry", "5 to 9 min"
                    ),
                    RowView(LinkView("Copper cell", "places/copper"), "6", "board wet", "20 to 90 min"),
                ),
            ),
            GroupView("Around it", "around_it", (RowView(LinkView("Light table", "places/light")),)),
        ),
    ),
)

GLOSSARY = GlossaryView(
    (
        TermView("dwell", "Dwell", "The time that the board stays in one bath.", ("soak time", "dip time")),
        TermView("micro-etch", "Micro-etch", "Acid bath that takes a very thin layer off the copper."),
    )
)

A_DM2 = UnitView("A/dm2", "A/dm²", 100.0)
DM2 = UnitView("dm2", "dm²", 1.0, 100.0)
CM2 = UnitView("cm2", "cm²", 1.0, 10000.0)
CALCULATOR = CalculatorView(
    "plating_current",
    "Plating current",
    "Decides what the rectifier is set to.",
    (
        BoxView(
            "density",
            "Current density",
            "j",
            "1.9",
            units=(A_DM2,),
            usual="1 to 3 A/dm²",
            usual_low=100.0,
            usual_high=300.0,
            low=10.0,
            high=1000.0,
            hard="0.1 to 10 A/dm²",
        ),
        BoxView("area", "Area to be plated", "A", "2.57", units=(DM2, CM2)),
        BoxView("contact", "Area of the contacts", "A_c", "0.06", units=(DM2,)),
    ),
    "Current",
    "I",
    (UnitView("A", "A"), UnitView("mA", "mA", 1.0, 1000.0)),
    (1, 0),
    shown=f"5.0{NB}A",
    mathml='<math display="block"><mi>I</mi><mo>=</mo><mi>j</mi><mo>(</mo><mi>A</mi><mo>+</mo>'
    "<msub><mi>A</mi><mi>c</mi></msub><mo>)</mo></math>",
    examples=(WorkedView((("Current density", "1.9 A/dm²"), ("Area", "2.57 dm²")), f"5.0{NB}A"),),
    cautions=("Amperes, not milliamperes.", "Never above what the supply can give."),
    source="Definition of current density",
    reckoner=ReckonerView(
        "Current for an area", ("Area", "1 A/dm²", "2 A/dm²"), (("1 dm²", "1.0 A", "2.0 A"),)
    ),
    used_in=(COPPER_RUN,),
)

RULE = RuleDoc(
    "arrives-wet",
    Level.ERROR,
    "part",
    "The part is wet where the place takes only dry parts.",
    "A wet board traps air and thins the bath.",
    "- id: black-in\n  do: put-in\n  at: black   # still wet from <rinse-2>",
    "- {id: dry-2, do: dry, at: blower}\n- id: black-in\n  do: put-in",
    ("places",),
)

REPORT = ReportView(
    "What was checked",
    "No errors, 1 warning, 5 accepted.",
    (
        FindingView(
            "warning",
            LinkView("arrives-wet", "checks/arrives-wet"),
            "copper-the-holes.yml:204",
            "the board is still wet when it enters graphite",
            "put a dry step before it",
        ),
    ),
    (NotMadeView(LinkView("arrives-wet", "checks/arrives-wet"), "the lab declares no part"),),
    "A checker proves only what is declared.",
)

POSTED = PostedView(
    (CopyView("Coat card", "cards/copper-the-holes/coat-card.pdf", "3", "at station 3", "current"),
     CopyView("Etch card", "", "2", "at station 5", "replace: step 41 changed", replace=True)),
    (
        CurrentCardView("copper-the-holes", "coat-card", "Coat card", "3", "K7Q2-M9XA",
                        "cards/copper-the-holes/coat-card.pdf", "procedures/copper-the-holes",
                        changes=(("2", ("Micro-etch 50 s, now 40 s",)),),
                        codes=(("OLD1OLD1", "2"), ("K7Q2M9XA", "3"))),
    ),
    room="Printed Circuits Lab, Larkmere", day="25 November 2026",
    replace=(
        TickGroupView(
            "Coat card", "Take down", "issue 2 · OLD1-OLD1",
            (TickView("at station 5", "copy 2", "newel copies replaced copper-the-holes/coat-card 2"),),
            "issue 3 · K7Q2-M9XA", ("Micro-etch 50 s, now 40 s",), "cards/copper-the-holes/coat-card.pdf",
        ),
    ),
    look=(
        TickGroupView(
            "Coat card", "Look, due 1 November 2026:", "it should be issue 3 · K7Q2-M9XA",
            (TickView("in the store", "copy 1", "newel copies looked-at copper-the-holes/coat-card 1"),),
        ),
    ),
    wrong=1,
)  # fmt: skip
