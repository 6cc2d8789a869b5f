%
O1 (across a hole of half its depth and a digit more)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.01
G1 Z-0.0041 F10.
G0 Z1.
X-3.
Z-0.008
G1 X3. F100. ; expect depth-uneven warning: the pass takes no more than 3.9 µm where no level lies before it, its step-down is 8 µm && over 0.3144 mm of its way, good to a cell of the height field, lies what ramps, plunges, round tools or other passes left
G0 Z1.
M5
M30
%
