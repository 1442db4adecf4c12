"""A few problems as data, for the forms to write."""

from generator.cli.report import Report, Walked
from generator.problems import Accepted, Cause, Level, Location, Problem, RuleDoc

FILE = "procedures/copper-the-holes.yml"
TEXT = "\n" * 203 + "      - id: black-in\n        say: Lower the board in.\n"

WET = Problem(
    "arrives-wet",
    Level.ERROR,
    Location(FILE, 204, 9),
    "the board is still wet when it enters graphite (station 3), which takes only dry parts",
    "put a `do: dry` step and an inspection between rinse-2 and black-in",
    step="black-in",
    label="last made wet at step rinse-2 (line 171); nothing dries it before here",
    causes=(Cause("wet:", "rinse-2"),),
)
LATE = Problem(
    "too-late",
    Level.WARNING,
    Location(FILE, 205, 14, 24),
    "10 min go by, 8 min are the most",
    "shorten the mend, or 50 % of it",
    step="black-in",
    path="after see-pink failed once",
    follows=4,
)
LIVED_WITH = Problem(
    "gloves-on-clean-thing",
    Level.ACCEPTED,
    Location("procedures/lab.yml", 3, 1),
    "wet gloves touch the light table",
    "take the gloves off first",
    place="light-table",
    accepted=Accepted("instructor", "2027-06-30", "The table counts as wet."),
)
DOC = RuleDoc("arrives-wet", Level.ERROR, "part", "The part is wet where the place takes dry parts.",
              "Water spoils the next bath.", "a: 1", "a: 2", needs=("part",))  # fmt: skip
REPORT = Report(
    (WET, LATE, LIVED_WITH),
    {FILE: TEXT},
    Walked(procedures=2, classes=1, steps=122, paths=26),
    {"card-too-small": ("cards",), "card-stage-unknown": ("cards",), "ends-dirty": ("part", "residues")},
    (DOC,),
)
