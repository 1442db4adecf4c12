"""What a rule says about itself: a good example that can be pasted, a bad one that differs from it."""

import pytest

from generator.checks import RULES, Rule
from generator.notation import read_text


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.doc.id)
def test_a_rule_says_what_why_and_how_to_do_better(rule: Rule) -> None:
    doc = rule.doc
    assert rule.in_lab or rule.in_procedure or rule.found_by
    assert doc.what.endswith(".")
    assert doc.why.endswith(".")
    assert doc.source
    assert doc.bad != doc.good


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.doc.id)
def test_a_good_example_can_be_pasted(rule: Rule) -> None:
    if rule.found_by != "formulas":
        assert [p.message for p in read_text(rule.doc.good.encode(), "good.yml").problems] == []


def test_no_rule_stands_twice() -> None:
    ids = [rule.doc.id for rule in RULES]
    assert len(ids) == len(set(ids))


def test_a_rule_lies_in_the_folder_of_its_subject() -> None:
    for rule in RULES:
        place = f"generator.checks.{rule.doc.subject}.{rule.doc.id.replace('-', '_')}"
        assert __import__(place, fromlist=["RULE"]).RULE is rule
