"""Coefficients of the general formula for the density of ethanol-water mixtures.

Source: OIML R 22 (International alcoholometric tables), the same as in the annex of Council Directive
76/766/EEC (OJ L 262, 27.9.1976, p. 149). The formula, its limits, the numbers of terms, A1 to A5 and B1 to B4
were read in the directive; the rest come from public implementations of the formula (A from nine that agree,
C from one) and are therefore checked against independent tables (see tests/outside/checks_strength.py).

A and B in kg/m3 and kg/(m3 K^k); C in kg/(m3 K^i).
"""

from __future__ import annotations

A: tuple[float, ...] = (
    9.982012300e2,
    -1.929769495e2,
    3.891238958e2,
    -1.668103923e3,
    1.352215441e4,
    -8.829278388e4,
    3.062874042e5,
    -6.138381234e5,
    7.470172998e5,
    -5.478461354e5,
    2.234460334e5,
    -3.903285426e4,
)

B: tuple[float, ...] = (
    -2.0618513e-1,
    -5.2682542e-3,
    3.6130013e-5,
    -3.8957702e-7,
    7.1693540e-9,
    -9.9739231e-11,
)

C: tuple[tuple[float, ...], ...] = (
    (
        1.693443461530087e-1,
        -1.046914743455169e1,
        7.196353469546523e1,
        -7.047478054272792e2,
        3.924090430035045e3,
        -1.210164659068747e4,
        2.248646550400788e4,
        -2.605562982188164e4,
        1.852373922069467e4,
        -7.420201433430137e3,
        1.285617841998974e3,
    ),
    (
        -1.193013005057010e-2,
        2.517399633803461e-1,
        -2.170575700536993,
        1.353034988843029e1,
        -5.029988758547014e1,
        1.096355666577570e2,
        -1.422753946421155e2,
        1.080435942856230e2,
        -4.414153236817392e1,
        7.442971530188783,
    ),
    (
        -6.802995733503803e-4,
        1.876837790289664e-2,
        -2.002561813734156e-1,
        1.022992966719220,
        -2.895696483903638,
        4.810060584300675,
        -4.672147440794683,
        2.458043105903461,
        -5.411227621436812e-1,
    ),
    (
        4.075376675622027e-6,
        -8.763058573471110e-6,
        6.515031360099368e-6,
        -1.515784836987210e-6,
    ),
    (
        -2.788074354782409e-8,
        1.345612883493354e-8,
    ),
)
