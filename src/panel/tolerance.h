/* tolerance.h: the few tolerances of the program, each with its unit and reason.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

/* Values of any unit closer than this are equal, and a limit counts as met within it. */
#define PP_TIE 1e-6

/* Expansions are of the order of 1e-5 /K, so PP_TIE would make all of them equal. */
#define PP_TIE_EXPANSION 1e-12

/* mm: a polygon this close to a curve may stand for it. */
#define PP_CURVE_TOLERANCE 0.001

/* mm: side of a cell of the anchored grid. */
#define PP_CELL 0.5

/* m/s², standard acceleration of free fall (CGPM 1901). */
#define PP_GRAVITY 9.80665
