%
O1 (back over a ramp that still stands)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0. Z1.
Z0.
G1 X0. Z-0.004 F100.
X3.
G0 Z1.
X3.
Z-0.008
G1 X-0.6 ; expect depth-uneven warning: the pass takes up to && its step-down is 4 µm && over 0.6 mm of its way, good to a cell of the height field, lies what ramps, plunges, round tools or other passes left
G0 Z1.
M5
M30
%
