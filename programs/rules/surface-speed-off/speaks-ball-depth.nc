%
O1 (at 20 µm a ball of 0.4 mm cuts on 0.1744 mm)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S73025 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300. ; expect surface-speed-off warning: surface speed 39.9998 m/min, the tool wants 40 m/min to 160 m/min && S73026 or more && π × 0.1744 mm × 73025 rpm; range from tools.3.surface_speed
G0 Z1.
M5
M30
%
