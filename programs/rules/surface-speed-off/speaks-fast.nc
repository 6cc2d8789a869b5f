%
O1 (a revolution too fast)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S127324 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300. ; expect surface-speed-off warning: surface speed 160.0001 m/min, the tool wants 40 m/min to 160 m/min && S127323 or less && π × 0.4 mm × 127324 rpm; range from tools.3.surface_speed
G0 Z1.
M5
M30
%
