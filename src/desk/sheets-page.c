/* sheets-page.c: the last page of the work: the sheets as they will print.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheets-page.h"

#include "desk/template.h"

struct _PpSheetsPage
{
  GtkWidget   parent_instance;
  PpDocument *document;

  GtkWidget  *print;
};

G_DEFINE_FINAL_TYPE (PpSheetsPage, pp_sheets_page, GTK_TYPE_WIDGET)

enum
{
  PROP_DOCUMENT = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
pp_sheets_page_set_property (GObject      *object,
                             guint         prop_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  PpSheetsPage *self = PP_SHEETS_PAGE (object);

  if (prop_id == PROP_DOCUMENT)
    g_set_object (&self->document, g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static gboolean
pp_sheets_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (PP_SHEETS_PAGE (widget)->print);
}

static void
pp_sheets_page_dispose (GObject *object)
{
  g_clear_object (&PP_SHEETS_PAGE (object)->document);
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_SHEETS_PAGE);
  G_OBJECT_CLASS (pp_sheets_page_parent_class)->dispose (object);
}

static void
pp_sheets_page_class_init (PpSheetsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_sheets_page_dispose;
  G_OBJECT_CLASS (klass)->set_property = pp_sheets_page_set_property;
  widget_class->grab_focus = pp_sheets_page_grab_focus;
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                              G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/sheets-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, print);
}

static void
pp_sheets_page_init (PpSheetsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
