/* questions.h: the findings of each question, said once its figures are known.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each adds the findings of its own rows of the table in format.md, no others.
 */
#pragma once

#include "check/composition.h"
#include "check/conceal.h"
#include "check/finding.h"

G_BEGIN_DECLS

/* hole-edge, hole-wire, hole-border, hole-pocket, hole-small, hole-large, hole-corner, hole-hole,
 * knot-small (seventh page). holes.c */
void pp_ask_holes       (PpFindings          *findings,
                         const PpScene       *scene);
/* tips, floats, unsteady, slope, flat-on-shaped. rest-findings.c */
void pp_ask_rests       (PpFindings          *findings,
                         const PpScene       *scene,
                         PpRest             **rests);
/* no-joint, strain, joint-small, squeeze, glue-shows. joint-findings.c */
void pp_ask_joints      (PpFindings          *findings,
                         const PpScene       *scene,
                         PpRest             **rests,
                         PpJoint            **joints);
/* expansion, fire-slower, fused-over, seam, pocket-closed, stem-thick, stem-astray, stems-wide,
 * stem-short (tenth page). pocket.c */
void pp_ask_pockets     (PpFindings          *findings,
                         const PpScene       *scene,
                         PpRest             **rests);
/* wire-shows, hidden-barely, hole-shows, knot-shows, knot-barely, shows-aslant.
 * conceal-findings.c */
void pp_ask_concealment (PpFindings          *findings,
                         const PpScene       *scene,
                         const PpConceal     *conceal);
/* turns-over, wire-short, wire-taut, not-level, slips, wire-load, leans; hook-load, also where
 * `hang` is NULL because there is no wire.
 * hang-findings.c */
void pp_ask_hanging     (PpFindings          *findings,
                         const PpScene       *scene,
                         const PpHang        *hang,
                         const PpMass        *mass);
/* even-group, overhang, stock. composition-findings.c */
void pp_ask_composition (PpFindings          *findings,
                         const PpScene       *scene,
                         const PpComposition *composition);

G_END_DECLS
