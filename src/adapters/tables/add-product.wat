;; The product of src/adapters/tables/fast-heap.ts in WebAssembly text (W3C, with 128-bit vectors). Its bytes stand there, as
;; any assembler makes them of this text; fast-heap.test.ts holds them against the plain product.
(module
  (import "heap" "memory" (memory 1))
  ;; sum[0 .. width) += vector[0 .. count) times rows[0 .. count)[0 .. width); width a multiple of 4; places in bytes
  (func (export "addProduct") (param $sum i32) (param $vector i32) (param $count i32) (param $rows i32) (param $width i32)
    (local $stride i32) (local $end i32) (local $left i32) (local $row i32) (local $at i32)
    (local $x v128) (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (if (i32.eqz (local.get $count)) (then (return)))
    (local.set $stride (i32.shl (local.get $width) (i32.const 2)))
    (local.set $end (i32.add (local.get $sum) (local.get $stride)))
    (block $narrow
      (loop $wide
        (br_if $narrow (i32.gt_s (i32.add (local.get $sum) (i32.const 64)) (local.get $end)))
        (local.set $a (v128.load (local.get $sum)))
        (local.set $b (v128.load offset=16 (local.get $sum)))
        (local.set $c (v128.load offset=32 (local.get $sum)))
        (local.set $d (v128.load offset=48 (local.get $sum)))
        (local.set $left (local.get $count))
        (local.set $row (local.get $rows))
        (local.set $at (local.get $vector))
        (loop $next
          (local.set $x (v128.load32_splat (local.get $at)))
          (local.set $a (f32x4.add (local.get $a) (f32x4.mul (local.get $x) (v128.load (local.get $row)))))
          (local.set $b (f32x4.add (local.get $b) (f32x4.mul (local.get $x) (v128.load offset=16 (local.get $row)))))
          (local.set $c (f32x4.add (local.get $c) (f32x4.mul (local.get $x) (v128.load offset=32 (local.get $row)))))
          (local.set $d (f32x4.add (local.get $d) (f32x4.mul (local.get $x) (v128.load offset=48 (local.get $row)))))
          (local.set $row (i32.add (local.get $row) (local.get $stride)))
          (local.set $at (i32.add (local.get $at) (i32.const 4)))
          (br_if $next (local.tee $left (i32.sub (local.get $left) (i32.const 1)))))
        (v128.store (local.get $sum) (local.get $a))
        (v128.store offset=16 (local.get $sum) (local.get $b))
        (v128.store offset=32 (local.get $sum) (local.get $c))
        (v128.store offset=48 (local.get $sum) (local.get $d))
        (local.set $sum (i32.add (local.get $sum) (i32.const 64)))
        (local.set $rows (i32.add (local.get $rows) (i32.const 64)))
        (br $wide)))
    (block $done
      (loop $four
        (br_if $done (i32.ge_s (local.get $sum) (local.get $end)))
        (local.set $a (v128.load (local.get $sum)))
        (local.set $left (local.get $count))
        (local.set $row (local.get $rows))
        (local.set $at (local.get $vector))
        (loop $next
          (local.set $a (f32x4.add (local.get $a) (f32x4.mul (v128.load32_splat (local.get $at)) (v128.load (local.get $row)))))
          (local.set $row (i32.add (local.get $row) (local.get $stride)))
          (local.set $at (i32.add (local.get $at) (i32.const 4)))
          (br_if $next (local.tee $left (i32.sub (local.get $left) (i32.const 1)))))
        (v128.store (local.get $sum) (local.get $a))
        (local.set $sum (i32.add (local.get $sum) (i32.const 16)))
        (local.set $rows (i32.add (local.get $rows) (i32.const 16)))
        (br $four)))))
