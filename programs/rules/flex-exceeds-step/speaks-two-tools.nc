%
O1 (the lower floor by a tool that bends more than that of the upper one)
G21 G90 G17 G94
G54
T4 M6
G43 H4
S30000 M3
G0 X-3. Y-1. Z1.
Z-0.004
G1 X3. F20.
G0 Y-0.7
G1 X-3.
G0 Y-0.4
G1 X3.
G0 Y-0.1
G1 X-3.
G0 Y0.2
G1 X3.
G0 Y0.5
G1 X-3.
G0 Y0.8
G1 X3.
G0 Y1.1
G1 X-3.
G0 Z1.
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0.
Z-0.008
G1 X3. F200. ; expect flex-exceeds-step error: the tool's flex changes the step of 4 µm by 3.18 µm (1.989 to 4.959), allowed 1.32 µm && a neck 4.325 mm long or shorter on tool 3, or a lower force && lower level: floor 3.868 µm && upper level: floor 0.6878 µm | expect tools-share-step warning: upper level by tool 4, lower level by tool 3
G0 Z1.
M5
M30
%
