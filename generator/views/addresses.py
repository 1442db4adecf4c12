"""The address of every kind of page: stable, made of ids, since cards and links point at them."""

HOME = ""
GLOSSARY = "glossary"
PROCEDURES = "procedures"
PLACES = "places"
CHEMICALS = "substances"
CALCULATORS = "calculators"
CHECKS = "checks"
REPORT = "checks/report"
CARDS = "cards"
CURRENT = "cards/current"


def procedure_address(id: str) -> str:
    """A procedure's page."""
    return f"procedures/{id}"


def hazards_address(procedure: str) -> str:
    """A procedure's hazard summary."""
    return f"procedures/{procedure}/hazards"


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


def picture_path(file: str) -> str:
    """A picture of the lab from the root of the site."""
    return f"pictures/{file}"


def current_card_query(procedure: str, card: str, issue: str, code: str) -> str:
    """The way from the root to the answer for one copy of a card; this is what its QR code holds."""
    return f"{CURRENT}/index.html?c={procedure}/{card}&i={issue}&k={code}"
