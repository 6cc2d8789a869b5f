%
O1 (four ten-thousandths of an inch are 101.6 increments)
G20 G90 G17 G94
G54
G0 X0. Y0. Z0.1
G1 X0.0004 F5. ; expect inch-rounding note @4: X0.0004 inch is 0.01016 mm, stored as 0.0102 mm, error 0.04 µm && an inch is 25.4 mm (exact); increment from machine.inch_resolution, else machine.resolution
M30
%
