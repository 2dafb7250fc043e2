/* glue-map-private.h: the fields of a glue map, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/em.h"
#include "desk/glue-map.h"
#include "desk/palette.h"
#include "sheet/labels.h"

G_BEGIN_DECLS

/* Room for the figures at the bench. */
#define PP_GLUE_MAP_LEFT_EM 6.5
#define PP_GLUE_MAP_TOP_EM 2.5

struct _PpGlueMap
{
  GtkWidget      parent_instance;
  PpDocument    *document;
  const PpPlan  *plan;
  const PpPanel *panel;    /* that the picture is of */
  int            step;
  gboolean       is_bench;

  GskRenderNode *picture;  /* or NULL: to be drawn */
  PpPoint        at;       /* px, of the panel's origin */
  double         scale;    /* px a mm */
  PpSheetLabel  *labels;   /* px, of the numbers, one a step; or NULL */
};

PpPoint pp_glue_map_to_px        (PpGlueMap     *self,
                                  PpPoint        mm);

/* glue-map-marks.c */
void    pp_glue_map_draw_numbers (PpGlueMap     *self,
                                  cairo_t       *cr,
                                  const PpScene *scene);
/* Where the step's piece goes: a flower's middle, a long piece's tip and base. */
void    pp_glue_map_draw_figures (PpGlueMap     *self,
                                  cairo_t       *cr,
                                  const PpScene *scene);
/* The step whose number or piece is at `px`, or PP_NO_STEP. */
int     pp_glue_map_find_step    (PpGlueMap     *self,
                                  PpPoint        px);

G_END_DECLS
