"""Verdicts, severities and faces as they are said to a person."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

translate = QCoreApplication.translate


def verdict_word(verdict: str) -> str:
    """The verdict as it is said to a person."""
    words = {
        "cut before": translate("Words", "cut before"),
        "expected": translate("Words", "expected"),
        "tight": translate("Words", "tight"),
        "beyond": translate("Words", "beyond"),
        "not tried": translate("Words", "not tried"),
    }
    return words.get(verdict, verdict)


def severity_word(severity: str) -> str:
    """The severity as it is said to a person."""
    words = {
        "hazard": translate("Words", "hazard"),
        "scrap": translate("Words", "scrap"),
        "rework": translate("Words", "rework"),
        "habit": translate("Words", "habit"),
    }
    return words.get(severity, severity)


def face_word(face: str) -> str:
    """The face that is up, as the heading has it."""
    words = {
        "top": translate("Words", "Top up"),
        "bottom": translate("Words", "Bottom up"),
        "front": translate("Words", "Front up"),
        "rear": translate("Words", "Rear up"),
        "left": translate("Words", "Left end up"),
        "right": translate("Words", "Right end up"),
    }
    return words.get(face, face)
