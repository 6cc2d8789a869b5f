%
O1 (the upper floor is the one that is too deep)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-1. Z1.
Z-0.004
G1 X3. F200.
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
X-3. Y0.
Z-0.008
G1 X3. F20. ; expect flex-exceeds-step error: the tool's flex changes the step of 4 µm by 3.18 µm (1.989 to 4.959), allowed 1.32 µm && a neck 3.869 mm long or shorter, or a lower force && lower level: floor 0.6878 µm (0.4303 to 1.073) too deep (tool 3, 2 flutes, depth 4 µm: largest chip 0.3333 µm × chip width 0.004 mm × specific force 20720 MPa × 1.6 = force 0.04421 N (0.02763 to 0.06907); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source)) && upper level: floor 3.868 µm (2.42 to 6.032) too deep && allowed is limits.flex_share 0.33 of the step
G0 Z1.
M5
M30
%
