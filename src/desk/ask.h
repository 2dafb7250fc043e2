/* ask.h: a question or a sentence in a window of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_ASK_NONE (-1)
#define PP_ASK_REPLACE 1

/* answer: the index of the button; PP_ASK_NONE where the maker went away from the question. */
typedef void (*PpAskFunc) (int      answer,
                           gpointer data);

typedef struct
{
  const char         *question;
  const char         *detail;      /* nullable: what follows from each answer */
  const char * const *buttons;     /* labels ended by NULL; the last is what Return does */
  int                 losing;      /* the button by which something is lost, or PP_ASK_NONE */
} PpAsk;

/* All strings are copied. `done` is called once, in any case. */
void pp_ask      (GtkWindow   *parent,
                  const PpAsk *ask,
                  PpAskFunc    done,
                  gpointer     data);
/* Whether the file at `path`, which is there, may be replaced: `done` then gets PP_ASK_REPLACE. The
 * file dialog asked about the name as it was typed; with the ending it is another. */
void pp_ask_replace (GtkWindow  *parent,
                     const char *path,
                     PpAskFunc   done,
                     gpointer    data);
/* Says one sentence that must not be missed: something was not done. */
void pp_ask_tell (GtkWindow   *parent,
                  const char  *sentence);

G_END_DECLS
