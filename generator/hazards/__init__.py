"""GHS facts and screening: statements, labels, protection, reactivity; mixtures from composition."""

from generator.hazards.advice import Advice, advice
from generator.hazards.cas import cas_check_digit, cas_digit_right, cas_well_formed
from generator.hazards.classification import HazardClass, SpecificLimit, classes_of, read_class, read_limit
from generator.hazards.comparing import Dropped, cut_off, dropped_statements, undeclared_classes
from generator.hazards.composition import Ate, Composition, Ingredient, NotScreened, ScreeningProblem
from generator.hazards.declared import declared_ingredient
from generator.hazards.density import DensityUsed
from generator.hazards.drawings import pictogram_alt, pictogram_codes, pictogram_svg, pictogram_title
from generator.hazards.edition import Edition
from generator.hazards.effects import Effect, effects
from generator.hazards.evidence import Evidence
from generator.hazards.hazard_words import HazardWord, hazard_word, hazard_word_ids
from generator.hazards.labels import (
    OPEN_QUESTION,
    LabelLine,
    label_statements,
    missing_in,
    pictograms,
    signal_word,
)
from generator.hazards.languages import statement_in
from generator.hazards.organ import is_thin
from generator.hazards.precautionary import (
    Precaution,
    Precautions,
    precaution,
    precaution_text,
    precautions,
)
from generator.hazards.protection import (
    Protection,
    asks_protection,
    gas_maker,
    grave_as_bought,
    needs_extraction,
    needs_eyewash,
    needs_sign_off,
    oxidiser,
)
from generator.hazards.reactivity import (
    BLANK_SAYS,
    NOT_HELD_SAYS,
    Meeting,
    group_count,
    group_name,
    held_groups,
    meeting,
    meetings,
)
from generator.hazards.screening import CAUTION, Screening, screen
from generator.hazards.shares import Share, Shares, shares_of
from generator.hazards.stated import stated_ingredient
from generator.hazards.statements import (
    Statement,
    Use,
    combine_codes,
    is_statement,
    is_withdrawn,
    nearest_code,
    statement,
    statement_codes,
    statement_text,
)
from generator.hazards.steps import Step, Term, Unknown
from generator.hazards.stronger import covered_by, shown_codes, stronger_covers
from generator.hazards.substances import (
    KnownSubstance,
    known_substances,
    substance_by_cas,
    substance_by_name,
)
from generator.hazards.tables import source_of, unresolved_in

__all__ = [
    "BLANK_SAYS",
    "CAUTION",
    "NOT_HELD_SAYS",
    "OPEN_QUESTION",
    "Advice",
    "Ate",
    "Composition",
    "DensityUsed",
    "Dropped",
    "Edition",
    "Effect",
    "Evidence",
    "HazardClass",
    "HazardWord",
    "Ingredient",
    "KnownSubstance",
    "LabelLine",
    "Meeting",
    "NotScreened",
    "Precaution",
    "Precautions",
    "Protection",
    "Screening",
    "ScreeningProblem",
    "Share",
    "Shares",
    "SpecificLimit",
    "Statement",
    "Step",
    "Term",
    "Unknown",
    "Use",
    "advice",
    "asks_protection",
    "cas_check_digit",
    "cas_digit_right",
    "cas_well_formed",
    "classes_of",
    "combine_codes",
    "covered_by",
    "cut_off",
    "declared_ingredient",
    "dropped_statements",
    "effects",
    "gas_maker",
    "grave_as_bought",
    "group_count",
    "group_name",
    "hazard_word",
    "hazard_word_ids",
    "held_groups",
    "is_statement",
    "is_thin",
    "is_withdrawn",
    "known_substances",
    "label_statements",
    "meeting",
    "meetings",
    "missing_in",
    "nearest_code",
    "needs_extraction",
    "needs_eyewash",
    "needs_sign_off",
    "oxidiser",
    "pictogram_alt",
    "pictogram_codes",
    "pictogram_svg",
    "pictogram_title",
    "pictograms",
    "precaution",
    "precaution_text",
    "precautions",
    "read_class",
    "read_limit",
    "screen",
    "shares_of",
    "shown_codes",
    "signal_word",
    "source_of",
    "stated_ingredient",
    "statement",
    "statement_codes",
    "statement_in",
    "statement_text",
    "stronger_covers",
    "substance_by_cas",
    "substance_by_name",
    "undeclared_classes",
    "unresolved_in",
]
