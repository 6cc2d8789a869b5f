%
O1 (the shallower cut is the slower)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S70000 M3
G0 X-3. Y-0.5 Z1.
Z-0.02
G1 X3. F300. ; expect surface-speed-off warning x2: surface speed 38.34 m/min, the tool wants 40 m/min to 160 m/min && π × 0.1744 mm × 70000 rpm; range from tools.3.surface_speed && S73026 or more
G0 Z1.
X-3. Y0.5
Z-0.01
G1 X3.
G0 Z1.
M5
M30
%
