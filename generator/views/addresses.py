"""The address of every kind of page: stable, made of ids, since cards and links point at them."""

HOME = ""
GLOSSARY = "glossary"
PROCEDURES = "procedures"
PLACES = "places"
CHEMICALS = "substances"
HAZARDS = "hazards"
CALCULATORS = "calculators"
CHECKS = "checks"
REPORT = "checks/report"
CARDS = "cards"
CURRENT = "cards/current"
REPLACE = "cards/replace"
MODEL = "start/model"


def procedure_address(id: str) -> str:
    """A procedure's page."""
    return f"procedures/{id}"


def hazards_address(procedure: str) -> str:
    """A procedure's hazard summary."""
    return f"procedures/{procedure}/hazards"


def day_plan_address(procedure: str) -> str:
    """The day plan of a class in words."""
    return f"procedures/{procedure}/day-plan"


def office_address(procedure: str) -> str:
    """A procedure's sheet for the safety office."""
    return f"procedures/{procedure}/office"


def sheet_path(address: str, kind: str) -> str:
    """A printed form of a page, from the root: "procedures/x" and "hazards" give procedures/x/hazards.pdf."""
    return f"{address}/{kind}.pdf"


def labels_kind(kind: str, paper: str) -> str:
    """A sheet of labels by its paper: "labels" on A4 is labels, on Letter it is labels-letter."""
    return kind if paper == "A4" else f"{kind}-{paper.lower()}"


def place_address(id: str) -> str:
    """A place's page."""
    return f"places/{id}"


def mixture_address(id: str) -> str:
    """A mixture's page."""
    return f"mixtures/{id}"


def substance_address(id: str) -> str:
    """A substance's page."""
    return f"substances/{id}"


def calculator_address(name: str) -> str:
    """A formula's page."""
    return f"calculators/{name}"


def rule_address(id: str) -> str:
    """A rule's page."""
    return f"checks/{id}"


def card_path(procedure: str, card: str, kind: str = "pdf") -> str:
    """A card's file from the root of the site; `kind` is pdf or svg."""
    return f"cards/{procedure}/{card}.{kind}"


def run_sheet_path(procedure: str) -> str:
    """A procedure's run sheet from the root of the site."""
    return f"cards/{procedure}/run-sheet.pdf"


def day_plan_path(procedure: str) -> str:
    """The day plan of a class from the root of the site."""
    return f"cards/{procedure}/day-plan.pdf"


def door_sign_path(procedure: str, step: str) -> str:
    """The door sign for a step that is left running, from the root of the site."""
    return f"cards/{procedure}/door-sign-{step}.pdf"


CHECK_OFF_PATH = "cards/open-and-close.pdf"
PRINT_ALL_PATH = "cards/print-all.pdf"


def picture_path(file: str) -> str:
    """A picture of the lab from the root of the site."""
    return f"pictures/{file}"


def current_card_query(procedure: str, card: str, issue: str, code: str) -> str:
    """The way from the root to the answer for one copy of a card; this is what its QR code holds."""
    return f"{CURRENT}/index.html?c={procedure}/{card}&i={issue}&k={code}"
