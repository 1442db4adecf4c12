"""Everything worked out about one procedure before anything is judged or shown."""

from generator.study.lookups import nearest, title_of
from generator.study.study import LabStudy, Located, Study, study_lab, study_procedure

__all__ = ["LabStudy", "Located", "Study", "nearest", "study_lab", "study_procedure", "title_of"]
