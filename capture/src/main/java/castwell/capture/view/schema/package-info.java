/**
 * Makes JSON Schemas of shapes, and holds the shape of an OpenAPI document. Which routes there are
 * is known by the web.
 */
package castwell.capture.view.schema;
