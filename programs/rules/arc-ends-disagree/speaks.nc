%
O1 (2.1 um between the radii, and a radius shorter than half the chord)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X2.0021 Y0. I1. J0. F100. ; expect arc-ends-disagree error: difference 2.1 µm, allowed 2 µm
G0 X0. Y0.
G2 X2. R0.9 F100. ; expect arc-ends-disagree error: no such arc && half the distance of the ends is 1 mm, the radius 0.9 mm
M30
%
