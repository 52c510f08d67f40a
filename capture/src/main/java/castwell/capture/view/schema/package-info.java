/**
 * Makes JSON Schemas of shapes, and holds the shape of an OpenAPI document. The web module knows
 * which routes there are.
 */
package castwell.capture.view.schema;
