O1 (a gauge just too coarse) ; expect gauge-too-coarse warning: gauge uncertainty 0.26 µm, a quarter of the tolerance is 0.25 µm && a gauge of 0.25 µm or better && tolerance ±1 µm from job.tolerance, ratio 3.85 to 1, at least 4 to 1 wanted
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M30
