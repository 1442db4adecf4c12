"""The first page of a lab: whom to call, what to do when, when it is open, what is done here."""

from dataclasses import dataclass

from generator.views.index import RowView
from generator.views.shown import BannerView, CallView, EmergencyView, FactView, LinkView, SignView


@dataclass(frozen=True, slots=True)
class HomeView:
    """The lab's page; `emergency` is how help is called, `help` where things are, `changes` newest issues."""

    title: str
    place: str
    emergency: str
    help: tuple[FactView, ...]
    calls: tuple[CallView, ...]
    emergencies: tuple[EmergencyView, ...]
    sessions: tuple[FactView, ...]
    base_wear: tuple[SignView, ...]
    procedures: tuple[RowView, ...]
    doors: tuple[LinkView, ...] = ()
    banners: tuple[BannerView, ...] = ()
    changes: tuple[RowView, ...] = ()
