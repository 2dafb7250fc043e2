/* keyed-box.c: the children of a box, each known by a key, made to follow a list.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/keyed-box.h"

static void
drop_others (GtkBox    *box,
             GPtrArray *keys)
{
  g_autoptr (GHashTable) wanted = g_hash_table_new (g_str_hash, g_str_equal);
  GtkWidget *child, *next;

  for (guint i = 0; i < keys->len; i++)
    g_hash_table_add (wanted, g_ptr_array_index (keys, i));
  for (child = gtk_widget_get_first_child (GTK_WIDGET (box)); child != NULL; child = next)
    {
      next = gtk_widget_get_next_sibling (child);
      if (!g_hash_table_contains (wanted, gtk_widget_get_name (child)))
        gtk_box_remove (box, child);
    }
}

/* Mostly the child that stands there already. */
static GtkWidget *
find_from (GtkWidget  *child,
           const char *key)
{
  while (child != NULL && !g_str_equal (gtk_widget_get_name (child), key))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* How many children stand before the one that has the focus within it; -1: none has. */
static int
find_focus (GtkBox *box)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (box));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  int before = 0;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, GTK_WIDGET (box)))
    return -1;
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box));
       child != NULL && child != focus && !gtk_widget_is_ancestor (focus, child);
       child = gtk_widget_get_next_sibling (child))
    before++;
  return before;
}

/* To the child at `index`, or the last one if there are fewer. */
static void
focus_near (GtkBox *box,
            int     index)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box)), *next;

  while (child != NULL && index-- > 0 && (next = gtk_widget_get_next_sibling (child)) != NULL)
    child = next;
  if (child != NULL)
    gtk_widget_grab_focus (child);
}

void
pp_keyed_box_sync (GtkBox         *box,
                   GPtrArray      *keys,
                   PpKeyedBoxMake  make,
                   gpointer        data)
{
  GtkWidget *before = NULL;
  int focus;

  g_return_if_fail (GTK_IS_BOX (box) && keys != NULL && make != NULL);

  focus = find_focus (box);
  drop_others (box, keys);
  for (guint i = 0; i < keys->len; i++)
    {
      const char *key = g_ptr_array_index (keys, i);
      GtkWidget *here = before != NULL ? gtk_widget_get_next_sibling (before)
                                       : gtk_widget_get_first_child (GTK_WIDGET (box));
      GtkWidget *child = find_from (here, key);

      if (child == NULL)
        {
          child = make (key, data);
          gtk_widget_set_name (child, key);
          gtk_box_insert_child_after (box, child, before);
        }
      else if (child != here)
        gtk_box_reorder_child_after (box, child, before);
      before = child;
    }
  if (focus >= 0 && find_focus (box) < 0)
    focus_near (box, focus);
}

GtkWidget *
pp_keyed_box_find (GtkBox     *box,
                   const char *key)
{
  g_return_val_if_fail (GTK_IS_BOX (box) && key != NULL, NULL);
  return find_from (gtk_widget_get_first_child (GTK_WIDGET (box)), key);
}
