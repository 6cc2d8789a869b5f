%
O1 (a floor over the high cusps of a ball)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-3. Y-0.3125 Z1.
Z-0.03
G1 X3. F100.
G0 X-3. Y-0.1525 Z1.
Z-0.03
G1 X3. F100.
G0 X-3. Y0.0075 Z1.
Z-0.03
G1 X3. F100.
G0 X-3. Y0.1675 Z1.
Z-0.03
G1 X3. F100.
G0 X-3. Y0.3275 Z1.
Z-0.03
G1 X3. F100.
G0 Z1.
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0.0075 Z1.
Z-0.0302
G1 X3. F100. ; expect depth-uneven warning: the pass takes on the average && over 4 mm of its way, good to a cell of the height field, lies what ramps, plunges, round tools or other passes left
G0 Z1.
M5
M30
%
