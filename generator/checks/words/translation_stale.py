"""A translation that was compared with sentences that are no longer the posted ones."""

from collections.abc import Iterator, Mapping

from generator.checks.rule import Rule
from generator.model import LanguageFile, Procedure, Text
from generator.model.translation import sentences_of, translated
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="translation-stale",
    level=Level.WARNING,
    subject="words",
    what=(
        "A sentence changed in the base language after the issue named in `checked_against`, or there "
        "is no such "
        "issue. `none` stands until the first issue is posted."
    ),
    why=(
        "A reader of the other language works by yesterday's sentence, and nobody who reads only one of "
        "them can see it."
    ),
    bad="checked_against: 7   # issue 7 was never posted",
    good="checked_against: none   # nothing is posted yet",
)
_MOST = 4


def find(study: Study) -> Iterator[Problem]:
    """Language files of the procedure itself; a class has no sentences of its own."""
    if study.class_of is None:
        for file in study.languages.values():
            yield from judge(file, study.sentences, study.posted)


def judge(
    file: LanguageFile, now: Mapping[str, Text], issues: Mapping[str, Procedure]
) -> Iterator[Problem]:
    """One language file against the posted issues, by number; oldest first."""
    against = str(file.checked_against or "none")
    where = file.spot("checked_against")
    if against == "none":
        if issues:
            yield DOC.found(
                where,
                f"nobody has compared {file.language} with a posted issue yet",
                f"compare it with issue {list(issues)[-1]}, and write `checked_against: {list(issues)[-1]}`",
            )
        return
    if against not in issues:
        known = (
            f"the number of a posted issue ({', '.join(issues)})"
            if issues
            else "`none` until the first issue is posted"
        )
        yield DOC.found(
            where,
            f'there is no posted issue "{against}" that {file.language} can be checked against',
            f"write {known}",
        )
        return
    before = sentences_of(issues[against])
    fresh = [path for path, text in now.items() if before.get(path) != text]
    have = translated(file) if fresh else {}
    changed = [path for path in fresh if path in have]
    if changed:
        more = f" and {len(changed) - _MOST} more" if len(changed) > _MOST else ""
        count = "1 sentence" if len(changed) == 1 else f"{len(changed)} sentences"
        yield DOC.found(
            where,
            f"since issue {against}, {count} that {file.language} has translated changed",
            f"compare {', '.join(changed[:_MOST])}{more}, and name the issue that you compared with",
        )


RULE = Rule(DOC, in_procedure=find)
