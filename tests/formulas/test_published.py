"""Our formulas against values published outside the project."""

from pathlib import Path

import pytest

from tests.formulas.published import ALL, IN_HAZARDS, Published

IDS = """
faraday_ag_mass faraday_al_mass faraday_zn_galvanise faraday_zn_area rate_cu rate_ni rate_zn rate_ag
rate_cr cu_1oz dil_1 dil_2 dil_4 dil_5 dil_mass naoh_makeup stock_acetic_acid stock_aqueous_ammonia
stock_nitric_acid stock_phosphoric_acid stock_sulfuric_acid titr_hcl titr_h2so4_naoh titr_cu_edta
titr_cu_thiosulfate cu_per_salt h2so4_rho_10 h2so4_rho_30 h2so4_rho_40 h2so4_rho_60 h2so4_rho_70
h2so4_rho_90 rinse_watts rinse_single anod720_12 anod720_18 anod720_30 anod720_40 iacs barrel_0.3_25
barrel_1.0_25 barrel_0.8_20 ipc2221_2A_10K ipc2221_5A_20K ate_un_1 ate_un_3 ate_un_4_inh skin_un
nitric_ate_bands z535_5ft z535_8ft z535_15ft z535_20ft z535_40ft z535_60ft z535_100ft z535_125ft
z535_200ft
"""


@pytest.mark.parametrize("value", ALL, ids=lambda value: value.id)
def test_published_value(value: Published) -> None:
    assert value.work_out() == pytest.approx(value.expect, rel=value.rel, abs=1e-300)
    assert value.source
    assert value.evidence in {"read", "second", "computed"}


def test_every_published_value_is_used() -> None:
    assert len(IDS.split()) == 58
    assert {value.id.split()[0] for value in ALL} | set(IN_HAZARDS) == set(IDS.split())


@pytest.mark.parametrize("id", IN_HAZARDS)
def test_values_of_the_mixture_rules_stand_in_their_tests(id: str) -> None:
    file, text = IN_HAZARDS[id]
    assert text in (Path(__file__).parents[1] / "hazards" / file).read_text("utf-8")
