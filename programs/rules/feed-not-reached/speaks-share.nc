%
O1 (stops every 4.4 µm rub on more than a tenth of the way)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G61
G1 Z-0.02 F60.
G1 X0.0044 F600. ; expect feed-not-reached warning: planned feed down to 0 mm/min, a chip needs 27 mm/min, programmed 600 mm/min: no chip on 10.227 % of the contact length, allowed 10 %, and for 1 revolutions at a stretch, allowed 1
X0.0088
X0.0132
X0.0176
X0.0220
X0.0264
X0.0308
X0.0352
X0.0396
X0.0440
X0.0484
X0.0528
X0.0572
X0.0616
X0.0660
X0.0704
X0.0748
X0.0792
X0.0836
X0.0880
G64
G0 Z1.
M5
M30
%
