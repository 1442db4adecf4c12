"""A procedure of the invented college as finished views, for tests of pages without a lab behind them."""

from generator.views.plan import PlanStepView, PlanView, SessionView
from generator.views.procedure import CardLinkView, DifferView, ProcedureView, StageView, SymptomView
from generator.views.shown import (
    BadgeView,
    BannerView,
    CallView,
    FactView,
    LinkView,
    PictureView,
    SignView,
    StationView,
)
from generator.views.step import FailView, QuestionView, RecordView, SettingView, StepView, TimeView
from tests.site.sample_learning import LEARNING, STANDING

NB = "\N{NO-BREAK SPACE}"
GRAPHITE = StationView("3", "Graphite", "places/black")
COPPER = StationView("6", "Copper cell", "places/copper")
LIGHT = StationView("", "Light table", "places/light")
TECHNICIAN = CallView("Duty technician", f"room B12 or extension{NB}417", "then the course instructor")
CALL = "Call the duty technician."

COAT = StageView(
    "coat",
    "Coat and fix",
    (
        StepView(
            "fresh-gloves",
            "23",
            "Wear",
            "Bin the gloves. Put on a fresh pair.",
            takes=f"2{NB}min",
            wear=(SignView("M009", "Nitrile gloves", "on, a fresh pair"),),
            waste=FactView("Waste into", "Solid waste bag"),
            badges=(BadgeView("part", "board dry"), BadgeView("worn", "wearing goggles, coat, shoes, apron")),
        ),
        StepView(
            "open-3",
            "24",
            "Open",
            "Lid off.",
            station=GRAPHITE,
            takes=f"1{NB}min",
            look="float between the two notches, stirrer turning",
            look_fail=FailView("Lid on.", call=CALL),
            badges=(BadgeView("part", "board dry"), BadgeView("open", "lid 3 open")),
        ),
        StepView(
            "black-in",
            "25",
            "Put in",
            "Slide the DRY board in at a slant. Twist the rack.",
            station=GRAPHITE,
            time=TimeView(
                f"6{NB}min",
                f"5 to 9{NB}min",
                360.0,
                "Bench timer B",
                "Press the timer top once, then lift the board straight away.",
                low=300.0,
                high=540.0,
            ),
            stay="stay near",
            settings=(SettingView("Rock", f"10{NB}times"),),
            questions=(
                QuestionView(
                    "Which two things must not be on the board here?", "Water and salts from mains water."
                ),
            ),
            badges=(
                BadgeView("part", "board dry"),
                BadgeView("open", "lid 3 open"),
                BadgeView("worn", "wearing goggles, coat, shoes, apron, nitrile gloves"),
            ),
        ),
        StepView(
            "see-black",
            "33",
            "Check",
            "Look at every hole wall under the lamp.",
            station=LIGHT,
            takes=f"3{NB}min",
            check="even black wall, no pale patch, edge of the hole not broken",
            fail=FailView(
                redo=LinkView("step 23", "procedures/copper-the-holes", "fresh-gloves"),
                at_most="once",
                call=CALL,
            ),
            pause=f"Keep the board dry in a labelled bag, up to 3{NB}days.",
            picture=PictureView(
                "pictures/wall-even-and-patchy.svg",
                "Left: wall evenly black. Right: pale crescent near the top.",
            ),
            badges=(BadgeView("part", "board dry"),),
        ),
    ),
    time=f"About 48{NB}min, 12{NB}min of it hands-on",
)

PLATE = StageView(
    "plate",
    "Plate",
    (
        StepView(
            "copper-in",
            "46",
            "Put in",
            "Hang the WET board in the middle. Rock it. Bring the current up.",
            station=COPPER,
            since=f"within 8{NB}min of the end of step 40, because bare copper dulls in air",
            time=TimeView(
                f"54{NB}min",
                f"20 to 90{NB}min",
                3246.0,
                "Bench timer B",
                "Current to zero FIRST. Then lift.",
                "copper-in.for",
            ),
            stay="stay near",
            settings=(
                SettingView("Mode", "constant current"),
                SettingView("Current", f"5.0{NB}A", "copper-in.power"),
                SettingView("Bring up over", f"60{NB}s"),
            ),
            hazards=(SignView("W023", "Acid copper bath", "severe burns"),),
            watch=f"Every 15{NB}min: current within 0.3{NB}A of the setting, stirring on",
            watch_fail=FailView("Current to zero.", call=CALL),
            record=(
                RecordView("current-at-start", "Current at start", "A"),
                RecordView("current-at-end", "Current at end", "A"),
                RecordView("minutes", "Minutes", "min"),
            ),
            why="Done at once, because the wet copper dulls while it waits.",
            formulas=(LinkView("plating current", "calculators/plating_current"),),
            badges=(
                BadgeView("part", "board wet"),
                BadgeView("open", "lid 6 open"),
                BadgeView("live", "current on"),
                BadgeView("limit", f"must be in by 8{NB}min after step 40"),
            ),
        ),
        StepView(
            "measure",
            "53",
            "Check",
            "Measure three of the smallest holes with the four-wire meter. Weigh the coupon.",
            takes=f"8{NB}min",
            hold="the second person, until both answers agree",
            record=(
                RecordView("hole-1", "Hole 1", "mΩ", f"up to 0.70{NB}mΩ"),
                RecordView("coupon-copper", "Coupon copper", "µm", f"19 to 26{NB}µm"),
            ),
            fail=FailView("Keep the board. Do not plate again.", call=CALL),
        ),
    ),
)

PROCEDURE = ProcedureView(
    id="copper-the-holes",
    title="Copper the holes of a two-sided board",
    lead="For trained students, with a second person in the room.",
    stages=(COAT, PLATE),
    stop_rule="If you are unsure, current off first. Then board out, lid on, call the technician. "
    "A stopped job is never marked down.",
    call=TECHNICIAN,
    banners=(BannerView("draft", "Draft", "Not posted yet. Do not work from this page at the bench."),),
    facts=(
        FactView("Who", "Trained student"),
        FactView("Also present", "Second person in the room"),
        FactView("Whole run", f"4{NB}h 35{NB}min"),
        FactView("Hands-on", f"1{NB}h 50{NB}min"),
        FactView("Approved by", "Course instructor"),
        FactView("Review", "every 12 months"),
    ),
    wear=(
        SignView("M004", "Indirect-vent splash goggles", "from the door"),
        SignView("M009", "Nitrile gloves", "steps 8 to 51"),
        SignView("M013", "Face shield over goggles", "steps 35 to 51"),
    ),
    ready=(
        FactView("Line check-off", "valid for 12 months, given by the duty technician"),
        FactView("Second person", "in the room from step 34"),
        FactView("Router-drill", "booked, paper slots on the door"),
    ),
    tell_us_first=(
        "You have asthma or a skin allergy. The micro-etch can set off both.",
        "You wear contact lenses.",
    ),
    limits=(FactView("Length", f"up to 150{NB}mm"), FactView("Not for", "flexible material")),
    plan=PlanView(
        (
            SessionView("Tuesday short lab", 790, 965, "Tuesday short lab, 13:10 to 16:05"),
            SessionView("Thursday long lab", 600, 1000, "Thursday long lab, 10:00 to 16:40"),
        ),
        20,
        (
            PlanStepView("fresh-gloves", 2),
            PlanStepView("black-in", 46),
            PlanStepView("see-black", 3, pause="dry in a labelled bag"),
            PlanStepView("copper-in", 54.1, "near", "copper-in.for", point="Into the copper cell"),
            PlanStepView("measure", 170),
        ),
        f"4{NB}h 35{NB}min",
        f"1{NB}h 50{NB}min",
        (
            ("Tuesday short lab, 13:10 to 16:05", "no, pause after step 33", "none"),
            ("Thursday long lab, 10:00 to 16:40", "yes", "11:45"),
        ),
    ),
    symptoms=(
        SymptomView(
            "pale patch or pale crescent on a hole wall",
            LinkView("step 33", "procedures/copper-the-holes", "see-black"),
            ("air bubble in the graphite bath", "water in the hole"),
            "Fresh gloves, then coat once more.",
        ),
        SymptomView(
            "current falls or jumps while plating",
            LinkView("step 46", "procedures/copper-the-holes", "copper-in"),
            ("edge not touching the hook", "anode loose"),
            "Current to zero FIRST. Call the technician. Do not reach into the cell.",
        ),
    ),
    cards=(
        CardLinkView(
            "Coat card", f"A3, read from 1.5{NB}m", "cards/copper-the-holes/coat-card.pdf", "", "not posted"
        ),
    ),
    differs=(
        DifferView(
            "Graphite dispersion technical sheet, issue 7",
            "Their sheet fixes the coat longer and cooler than we do.",
            "Our small oven is slow when it is cool.",
            "Decided by the course instructor, 3 June 2026",
        ),
    ),
    learning=LEARNING,
    standing=STANDING,
    glossary=(("board", "The <b>panel</b> with its two copper faces."), ("rack", "What carries the board.")),
)
# What the search finds it by: words and tags.
FOUND_BY = (
    "copper graphite micro-etch H314 7664-93-9 sulfuric acid 0.1 mol/L pale crescent",
    ("H314", "7664-93-9"),
)
