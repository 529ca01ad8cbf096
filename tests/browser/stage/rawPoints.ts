/** The yardstick: the same stars as bare points of WebGL, no library, no glare, no rim, one round dot each. */
import type { StarBlock } from "#core/seams/index.ts";

const VERTEX = `#version 300 es
in vec3 dir; uniform mat3 view; uniform vec2 plane;
void main() {
  vec3 v = dir * view;
  gl_Position = v.z > 0. ? vec4(v.xy / v.z / plane.x * plane.y, 0., 1.) : vec4(3., 3., 0., 1.);
  gl_PointSize = 5.5;
}`;
const FRAGMENT = `#version 300 es
precision highp float; out vec4 colour;
void main() { float t = distance(gl_PointCoord, vec2(.5)) * 2.; colour = vec4(vec3(max(0., 1. - t)), 1.); }`;

export interface RawPoints {
  readonly gl: WebGL2RenderingContext;
  upload(blocks: readonly StarBlock[], faintestMag: number): void;
  draw(viewFromIcrs: Float64Array, planeRadius: number): void;
  destroy(): void;
}
export const createRawPoints = (sidePx: number): RawPoints => {
  const canvas = document.createElement("canvas");
  canvas.width = sidePx;
  canvas.height = sidePx;
  document.body.append(canvas);
  const gl = canvas.getContext("webgl2", { alpha: false, antialias: false })!;
  const program = gl.createProgram();
  for (const [type, text] of [
    [gl.VERTEX_SHADER, VERTEX],
    [gl.FRAGMENT_SHADER, FRAGMENT],
  ] as const) {
    const shader = gl.createShader(type)!;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.bindAttribLocation(program, 0, "dir");
  gl.linkProgram(program);
  gl.useProgram(program);
  const buffer = gl.createBuffer();
  gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
  gl.enableVertexAttribArray(0);
  gl.vertexAttribPointer(0, 3, gl.FLOAT, false, 12, 0);
  gl.enable(gl.BLEND);
  gl.blendFunc(gl.ONE, gl.ONE);
  gl.clearColor(0.1, 0.13, 0.17, 1);
  const at = (name: string) => gl.getUniformLocation(program, name);
  const [viewAt, planeAt] = [at("view"), at("plane")];
  const matrix = new Float32Array(9);
  let count = 0;
  return {
    gl,
    upload(blocks, faintestMag) {
      const parts: Float32Array[] = [];
      for (const block of blocks) {
        let n = 0;
        while (n < block.count && block.milliMag[n]! <= faintestMag * 1000) n += 1;
        parts.push(block.dirs.subarray(0, n * 3));
      }
      const data = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
      let offset = 0;
      for (const part of parts) {
        data.set(part, offset);
        offset += part.length;
      }
      gl.bufferData(gl.ARRAY_BUFFER, data, gl.DYNAMIC_DRAW);
      count = data.length / 3;
    },
    draw(viewFromIcrs, planeRadius) {
      matrix.set(viewFromIcrs);
      gl.viewport(0, 0, sidePx, sidePx);
      gl.uniformMatrix3fv(viewAt, false, matrix);
      gl.uniform2f(planeAt, planeRadius, 372 / 426);
      gl.clear(gl.COLOR_BUFFER_BIT);
      gl.drawArrays(gl.POINTS, 0, count);
    },
    destroy() {
      canvas.remove();
      gl.getExtension("WEBGL_lose_context")?.loseContext();
    },
  };
};
