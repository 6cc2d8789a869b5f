%
O1 (a hundred-thousandth of an inch, and an increment in millimetres)
G20 G90 G17 G94
G54
G0 X0. Y0. Z0.1
G1 X0.00001 F5. ; expect inch-rounding note @4: X0.00001 inch is 0.000254 mm, stored as 0.0003 mm, error 0.046 µm && an inch is 25.4 mm (exact); increment from machine.inch_resolution, else machine.resolution
M30
%
