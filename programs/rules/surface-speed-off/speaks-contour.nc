%
O1 (a ball along a slope, on too small a diameter at this speed)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1. Y0. Z1.
G1 Z0. F300.
G1 X0. Z-0.01
G1 X1. Z-0.02 ; expect surface-speed-off warning: the tool wants 40 m/min to 160 m/min && S59133 or more && π × 0.2153 mm × 30000 rpm; range from tools.5.surface_speed
G0 Z1.
M5
M30
%
