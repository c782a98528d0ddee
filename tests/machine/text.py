"""A small card to change in tests."""

CARD = """\
format: 1
title: Test mill
kind: light bench mill
invented: yes
card date: 2026-11-12
spindle:
  drive: induction, one belt
  speed change: step belt
  power: 500 W, plate
  short peak: 1.8
  reverses: no
  slips: no
  ranges:
    - name: belts
      efficiency: 0.9, guessed
      steps:
        - {speed: 320 rpm}
        - {speed: 560 rpm}
handles:
  - {name: x, a turn: 2.5 mm, a line: 0.02 mm, dial: mm}
"""
