%
O1 (a terrace between two)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X-1. F100.
Z-0.006
X0. ; expect step-differs error: step of stairs from -4 µm to -6 µm is 2 µm, declared 4 µm ±0.4 µm; the terrace at -6 µm is extra
Z-0.008
X3.
G0 Z1.
M5
M30
%
