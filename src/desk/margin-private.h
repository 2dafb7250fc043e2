/* margin-private.h: the fields of the margin, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/folding.h"
#include "desk/margin.h"
#include "desk/panel-figures.h"

G_BEGIN_DECLS

struct _PpMargin
{
  GtkWidget        parent_instance;
  PpDocument      *document;
  PpFolding       *folding;
  GtkWidget       *scroller;
  GtkLabel        *heading;
  GtkWidget       *all_right;
  GtkWidget       *calm;     /* said instead of findings */
  GtkWidget       *tick;
  GtkLabel        *calm_words;
  GtkBox          *open;     /* PpFindingRow; a row's or line's name is the key of its finding */
  GtkToggleButton *folded;   /* unfolds the lines */
  GtkLabel        *folded_words;
  GtkBox          *lines;    /* PpFindingLine */
  GtkToggleButton *known;
  GtkLabel        *known_words;
  GtkBox          *quiet;    /* PpFindingRow */
  GtkLabel        *waiting;
  GtkToggleButton *in_figures; /* unfolds them */
  PpPanelFigures  *figures;
  char            *to_focus; /* key of the open finding to bring into sight once it is laid out */
  gint64           shown_at; /* monotonic, us, of the last refresh; 0: none yet */
  guint            timer;    /* of a refresh to come, or of "Looking" */
};

/* Makes the rows and lines follow the findings of the document. */
void pp_margin_sync       (PpMargin   *self);
void pp_margin_clear_rows (PpMargin   *self);
/* Opens the finding and puts the focus there. */
void pp_margin_open_key   (PpMargin   *self,
                           const char *key);
/* Ask for the signals of these names. */
void pp_margin_show_me    (PpMargin   *self,
                           guint       index);
void pp_margin_light      (PpMargin   *self,
                           int         index);

/* For the template: keys that no part of the margin took. */
gboolean pp_margin_key_cb (GtkEventController *controller,
                           guint               key,
                           guint               code,
                           GdkModifierType     state,
                           PpMargin           *self);

G_END_DECLS
