"""The published rows as the working page prints them: other units than the catalogue, one line a material.

The columns: name on the page; kc1.1 MPa; mc; unit power hp/(in³/min), low and high; drilling
constants for torque and thrust; ft/min with high speed steel to mill, drill, ream, tap; lower end
for carbide mills m/min; other names.
"""

from __future__ import annotations

from typing import NamedTuple


class Row(NamedTuple):
    """One line of the table."""

    name: str
    kc11: float
    mc: float
    unit_power: tuple[float, float]
    kd: tuple[float, float]
    feet: dict[str, float]
    carbide_mill: float
    also: tuple[str, ...]


TABLE = """
1018 CD | 1500 | 0.21 | 0.74 0.74 | 20000 20000 | 110 90 60 55 | 210 | C15; 1.0401; C15E; C18
1020 | 1450 | 0.21 | 0.69 0.69 | 19000 19000 | 110 100 65 55 | 210 | C22; 1.0402; C22E
1045 | 1700 | 0.20 | 0.82 0.82 | 24000 24000 | 85 75 50 35 | 200 | C45; 1.0503; C45E; 1.1191
12L14 | 1200 | 0.21 | 0.44 0.44 | 12000 12000 | 140 120 80 60 | 210 | 11SMnPb30; 1.0718; 11SMn30; 1.0715
A36 | 1450 | 0.20 | 0.74 0.74 | 20000 20000 | 100 90 60 50 | 210 | S235JR; 1.0038; S275JR; 1.0044; St37-2; St44-2
S355J2 | 1550 | 0.21 | 0.78 0.78 | 22000 22000 | 95 80 55 45 | 200 | S355J2; 1.0577; S355J2+N; A572 grade 50
4140 annealed | 1775 | 0.24 | 0.72 0.72 | 24000 24000 | 75 70 45 30 | 160 | 42CrMo4+A; 1.7225
4140 prehard 28-32 HRC | 1750 | 0.24 | 0.87 0.87 | 31000 31000 | 50 45 30 15 | 120 | 42CrMo4+QT; 1.7225
4340 annealed | 1775 | 0.24 | 0.72 0.72 | 25000 25000 | 65 65 40 25 | 160 | 34CrNiMo6+A; 1.6582
O1 annealed | 1800 | 0.23 | 0.75 0.88 | 25000 25000 | 50 45 30 20 | 160 | 100MnCrW4; 1.2510; 90MnCrV8; 1.2842; O2
A2 annealed | 2200 | 0.23 | 0.88 0.88 | 26000 26000 | 50 50 35 20 | 130 | X100CrMoV5; 1.2363
D2 annealed | 2450 | 0.23 | 0.88 0.88 | 28000 28000 | 40 30 20 12 | 130 | X153CrMoV12; 1.2379
303 | 1750 | 0.20 | 0.60 0.60 | 20000 20000 | 90 85 55 25 | 60 | X8CrNiS18-9; 1.4305
304 | 2150 | 0.20 | 0.72 0.72 | 24000 35000 | 60 55 35 20 | 60 | X5CrNi18-10; 1.4301
316 | 2150 | 0.20 | 0.72 0.72 | 24000 35000 | 50 50 30 18 | 60 | X5CrNiMo17-12-2; 1.4401; 316L; X2CrNiMo17-12-2; 1.4404
17-4PH (H1025 / cond. A) | 2100 | 0.21 | 1.0 1.0 | 32000 32000 | 40 30 20 12 | 60 | X5CrNiCuNb16-4; 1.4542
Gray iron class 30 | 1150 | 0.24 | 0.60 0.71 | 18000 18000 | 70 80 55 60 | 150 | EN-GJL-200; EN-GJL-250; 5.1300; 5.1301; GG-20; GG-25
Ductile 65-45-12 | 1225 | 0.25 | 0.70 0.70 | 18000 18000 | 75 100 65 50 | 150 | EN-GJS-400-15; 5.3106; EN-GJS-450-10; GGG-40
Ductile 80-55-06 | 1350 | 0.28 | 0.85 0.85 | 22000 22000 | 60 70 45 35 | 120 | EN-GJS-500-7; 5.3200; GGG-50
6061-T6 | 750 | 0.25 | 0.33 0.33 | 7000 7000 | 300 250 250 80 | 200 | EN AW-6061-T6; AlMg1SiCu
6082-T6 | 750 | 0.25 | 0.33 0.33 | 7000 7000 | 300 250 250 80 | 200 | EN AW-6082-T6; AlSi1MgMn
7075-T6 | 800 | 0.25 | 0.33 0.33 | 7000 7000 | 300 250 250 80 | 200 | EN AW-7075-T6; AlZn5.5MgCu
2024-T351 | 800 | 0.25 | 0.33 0.33 | 7000 7000 | 300 250 250 80 | 200 | EN AW-2024-T351; AlCu4Mg1
MIC-6 / cast plate | 600 | 0.25 | 0.25 0.25 | 7000 7000 | 350 300 300 60 | 250 | EN AC-AlSi
C360 brass | 700 | 0.27 | 0.50 0.50 | 7000 7000 | 200 200 150 60 | 150 | CuZn39Pb3; CW614N; CuZn36Pb3; CW603N
Phosphor bronze C510 | 900 | 0.27 | 0.50 0.50 | 14000 14000 | 100 100 60 50 | 100 | CuSn5; CW451K; CuSn6; CW452K
Aluminium bronze C954 | 1200 | 0.27 | 0.91 0.91 | 18000 18000 | 80 70 45 30 | 80 | CuAl11Fe3; CuAl10Ni5Fe4; CW307G
Copper C110 | 1000 | 0.27 | 0.91 0.91 | 14000 14000 | 100 80 55 40 | 90 | Cu-ETP; CW004A
AZ31/AZ91 magnesium | 390 | 0.19 | 0.10 0.10 | 4000 4000 | 300 300 300 100 | 100 | EN-MC21120; MgAl3Zn1
Ti-6Al-4V | 1700 | 0.23 | 1.1 1.5 | 18000 29000 | 40 30 20 10 | 60 | TiAl6V4; 3.7165; grade 5
Inconel 718 aged | 3100 | 0.24 | 1.12 1.12 | 40000 40000 | 15 15 10 8 | 20 | NiCr19Fe19Nb5Mo3; 2.4668
Acetal (POM) | 100 | 0.20 | 0.05 0.05 | 1500 1500 | 400 200 150 80 | 280 | POM-C; POM-H
Nylon 6/66 | 100 | 0.20 | 0.05 0.05 | 1500 1500 | 400 200 150 80 | 280 | PA 6; PA 66
PTFE | 60 | 0.20 | 0.03 0.03 | 1000 1000 | 400 200 150 80 | 280 | PTFE
PVC rigid | 100 | 0.20 | 0.05 0.05 | 1500 1500 | 400 200 150 60 | 280 | PVC-U
Phenolic (paper/linen) | 150 | 0.20 | 0.08 0.08 | 2500 2500 | 300 150 100 40 | 150 | Hp 2061; Hgw 2082; PF CP; PF CC
"""


def _row(line: str) -> Row:
    name, kc11, mc, unit_power, kd, feet, carbide, also = (part.strip() for part in line.split("|"))
    low, high = (float(part) for part in unit_power.split())
    torque, thrust = (float(part) for part in kd.split())
    speeds = dict(zip(("mill", "drill", "ream", "tap"), map(float, feet.split()), strict=True))
    names = tuple(part.strip() for part in also.split(";") if part.strip())
    return Row(name, float(kc11), float(mc), (low, high), (torque, thrust), speeds, float(carbide), names)


ROWS = tuple(_row(line) for line in TABLE.strip().splitlines())
