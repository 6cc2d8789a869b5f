O1 (a gauge fine enough for one of three features, and nothing is cut in the last) ; expect gauge-too-coarse warning: a quarter of the tolerance is 0.125 µm && a gauge of 0.125 µm or better && tolerance ±0.5 µm from job.features.far.tolerance, ratio 1.92 to 1, at least 4 to 1 wanted
G21 G90 G17 G94
G54
T3 M6
S30000 M3
G0 G43 H3 X-1. Y-2. Z1.
Z-0.008
G1 Y2. F100.
G0 X1.
G1 Y-2. ; expect gauge-too-coarse warning: a quarter of the tolerance is 0.25 µm && a gauge of 0.25 µm or better && tolerance ±1 µm from job.features.right.tolerance, ratio 3.85 to 1, at least 4 to 1 wanted
G0 Z1.
M5
M30
