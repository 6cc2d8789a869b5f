O1 (a gauge just too coarse) ; expect gauge-too-coarse warning: gauge uncertainty 0.26 µm, a quarter of the tolerance is 0.25 µm
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M30
