%
O1 (a revolution more)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30001 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300. ; expect surface-speed-off warning: surface speed 37.7 m/min, the tool wants 10 m/min to 37.699 m/min && π × 0.4 mm × 30001 rpm; range from tools.3.surface_speed && S30000 or less
G0 Z1.
M5
M30
%
